package polewright.cli;

import java.util.List;
import java.util.regex.Pattern;
import picocli.CommandLine.Option;
import polewright.operations.Workbench;
import polewright.report.text.Line;
import polewright.report.text.Wrapping;

/** Text on a terminal. */
public class TerminalOutput {
    // Faint and red: this affects dark-adapted eyes least.
    private static final String DIM_RED = "\u001b[2;31m";
    private static final String PLAIN = "\u001b[0m";
    private static final String CLEAR_LINE = "\u001b[2K";
    private static final Pattern CONTROL = Pattern.compile("\\p{Cc}");

    @Option(names = "--red", description = "Print in dim red, for eyes used to the dark.")
    private boolean red;

    static boolean wantsRed(String... args) {
        return List.of(args).contains("--red");
    }

    static String reddened(String line) {
        return line.isEmpty() ? line : DIM_RED + line + PLAIN;
    }

    /** A log from someone else may contain control characters, which a terminal would obey. */
    static String printable(String line) {
        return line.chars().noneMatch(Character::isISOControl)
                ? line
                : CONTROL.matcher(line).replaceAll("\uFFFD");
    }

    /** Lines of text, wrapped to fit a screen. */
    public void say(Workbench workbench, List<String> lines) {
        for (String line :
                Wrapping.wrapped(lines.stream().map(TerminalOutput::printable).toList())) {
            workbench.out().println(red ? reddened(line) : line);
        }
        workbench.out().flush();
    }

    /** Lines of a report. */
    public void report(Workbench workbench, List<Line> lines) {
        say(workbench, Line.inTerminal(lines));
    }

    /** The same for one line. */
    public void report(Workbench workbench, Line line) {
        report(workbench, List.of(line));
    }

    /** Lines that form a picture: printed as they are. */
    public void show(Workbench workbench, List<String> lines) {
        lines.stream()
                .map(TerminalOutput::printable)
                .forEach(line -> workbench.out().println(red ? reddened(line) : line));
        workbench.out().flush();
    }

    public void say(Workbench workbench, String line) {
        say(workbench, List.of(line));
    }

    /** Overwrites the current line without ending it: for an interactive terminal. */
    public void overwrite(Workbench workbench, String line) {
        workbench.out().print("\r" + CLEAR_LINE + (red ? reddened(printable(line)) : printable(line)));
        workbench.out().flush();
    }
}
