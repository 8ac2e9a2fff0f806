package polewright.cli;

import java.util.Objects;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import polewright.operations.ExitStatus;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.action.LooksMistaken;
import polewright.report.text.DoubtWords;
import polewright.sky.InputRefused;
import polewright.store.LogChanged;

/** The one place where a failure becomes a line of text and an exit status. */
final class ErrorReports {
    private final Workbench workbench;
    private final boolean red;

    ErrorReports(Workbench workbench, boolean red) {
        this.workbench = workbench;
        this.red = red;
    }

    /** The parser refused what was typed. */
    int wrongUsage(ParameterException e, String... typed) {
        complain(UsageErrors.of(e, typed));
        return pointToHelp(e.getCommandLine());
    }

    /** The command failed. */
    int failed(Exception e, CommandLine line) {
        String command = line.getCommandSpec().qualifiedName();
        if (e instanceof WrongUsage wrong) {
            complain((command + " " + wrong.argument()).strip() + ": " + e.getMessage());
            return pointToHelp(line);
        }
        if (e instanceof InputRefused || e instanceof OperationFailed) {
            complain(command + ": "
                    + TerminalWording.GENERAL.of(Objects.requireNonNullElse(e.getMessage(), "the job failed")));
            return e instanceof InputRefused refused && refused.isForNow() ? ExitStatus.NOT_NOW : ExitStatus.JOB_FAILED;
        }
        if (e instanceof LooksMistaken doubtful) {
            return confirmed(command, TerminalWording.GENERAL.of(DoubtWords.of(doubtful.doubt())));
        }
        if (e instanceof LogChanged) {
            complain(command + ": " + e.getMessage());
            return ExitStatus.MOVED_ON;
        }
        complain(command + ": internal error ("
                + e.getClass().getSimpleName()
                + "). The log is safe. Please report what you typed.");
        if (workbench.environment().containsKey("POLEWRIGHT_DEBUG")) {
            e.printStackTrace(workbench.err());
        }
        return ExitStatus.JOB_FAILED;
    }

    private int confirmed(String command, String doubt) {
        complain(command + ": " + doubt);
        complain("If it is right, add " + AsTypedOption.NAME + ".");
        return ExitStatus.LOOKS_MISTAKEN;
    }

    private int pointToHelp(CommandLine line) {
        complain("Usage: " + line.getCommandSpec().qualifiedName() + " --help");
        return ExitStatus.WRONG_USAGE;
    }

    private void complain(String message) {
        String line = TerminalOutput.printable(message);
        workbench.err().println(red ? TerminalOutput.reddened(line) : line);
        workbench.err().flush();
    }
}
