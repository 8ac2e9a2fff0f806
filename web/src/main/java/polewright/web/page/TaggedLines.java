package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import polewright.report.text.Line;
import polewright.report.text.Tag;
import polewright.web.view.Section.Step;

/** Lines of a report as steps of a page; what is to be typed in a terminal is left out. */
final class TaggedLines {
    private TaggedLines() {}

    /** In order; a line without a tag continues the one before it. */
    static List<Step> steps(List<Line> lines) {
        List<Step> steps = new ArrayList<>();
        for (Line line : shown(lines)) {
            if (line.tag() == Tag.PLAIN && !steps.isEmpty()) {
                Step last = steps.remove(steps.size() - 1);
                steps.add(new Step(last.tag(), last.text() + " " + line.text().strip()));
            } else {
                steps.add(step(line));
            }
        }
        return List.copyOf(steps);
    }

    /** Line by line: a line without a tag stays separate. */
    static List<Step> lines(List<Line> lines) {
        return shown(lines).stream().map(TaggedLines::step).toList();
    }

    private static List<Line> shown(List<Line> lines) {
        return lines.stream().filter(line -> !line.tag().isForTyping()).toList();
    }

    private static Step step(Line line) {
        String text = line.text().strip();
        return new Step(line.tag().word(), line.tag() == Tag.PLAIN ? text : capitalised(text));
    }

    /** {@code Care} of {@code CARE}. */
    static String word(String tag) {
        return tag.charAt(0) + tag.substring(1).toLowerCase(java.util.Locale.ROOT);
    }

    static String capitalised(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
