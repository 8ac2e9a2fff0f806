package polewright.report.text;

import java.util.List;

/** A line of a report. */
public record Line(Tag tag, String text) {
    /** As a terminal shows it, before it is wrapped: {@code WHY   No fix yet.} */
    public String inTerminal() {
        return tag.prefix() + text;
    }

    /** The same for several. */
    public static List<String> inTerminal(List<Line> lines) {
        return lines.stream().map(Line::inTerminal).toList();
    }
}
