package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Wraps lines to a screen of 80 characters. Continuations are indented under the first word after the line's tag
 * ({@code WHY}, {@code 3.}, {@code #4 17:30 UTC}), so that tags are easy to see along the left edge.
 */
public final class Wrapping {
    /** Characters per line on a terminal of the usual size. */
    public static final int WIDTH = 80;

    // A tag, with what precedes it; or figures that a list puts in front of each line.
    private static final Pattern TAG =
            Pattern.compile(" *(?:[A-Z]{3,}:? +|\\d+\\. |#\\d+ +\\d\\d:\\d\\d UTC +|#\\d+ at \\d\\d:\\d\\d UTC: )?");
    private static final String INDENT = "  ";
    private static final String CONTINUED = " \\";
    private static final char NO_BREAK_SPACE = '\u00a0';

    private Wrapping() {}

    /** The same text with non-breaking spaces: for commands that are to be typed exactly. */
    public static String unbroken(String words) {
        return words.replace(' ', NO_BREAK_SPACE);
    }

    /**
     * A command on a line of its own, indented; a longer one continues on the next line after a backslash, before an
     * option, so that a shell still accepts it whole.
     */
    public static List<String> command(String typed) {
        if (length(INDENT + typed) <= WIDTH) {
            return List.of(unbroken(INDENT + typed));
        }
        List<String> lines = new ArrayList<>();
        String current = INDENT;
        String between = "";
        for (String part : typed.split(" (?=--)", -1)) {
            if (length(current + between + part + CONTINUED) > WIDTH) {
                lines.add(unbroken(current + CONTINUED));
                current = INDENT.repeat(3);
                between = "";
            }
            current += between + part;
            between = " ";
        }
        lines.add(unbroken(current));
        return lines;
    }

    /** Each line as one or more that fit; a single word longer than a line is left whole. */
    public static List<String> wrapped(List<String> lines) {
        List<String> fitting = new ArrayList<>();
        lines.forEach(line -> addWrapped(fitting, line));
        return fitting;
    }

    private static void addWrapped(List<String> fitting, String line) {
        if (length(line) <= WIDTH) {
            fitting.add(asShown(line));
            return;
        }
        Matcher tag = TAG.matcher(line);
        int tagEnd = tag.lookingAt() ? tag.end() : 0;
        String hanging = " ".repeat(tagEnd);
        StringBuilder current = new StringBuilder(line.substring(0, tagEnd));
        boolean isEmpty = true;
        for (String word : line.substring(tagEnd).split(" ", -1)) {
            if (!isEmpty && length(current) + 1 + length(word) > WIDTH) {
                fitting.add(asShown(current));
                current.setLength(0);
                current.append(hanging);
                isEmpty = true;
            }
            current.append(isEmpty ? "" : " ").append(word);
            isEmpty = false;
        }
        fitting.add(asShown(current));
    }

    private static int length(CharSequence text) {
        return (int) text.codePoints().count();
    }

    private static String asShown(CharSequence line) {
        return line.toString().replace(NO_BREAK_SPACE, ' ').stripTrailing();
    }
}
