package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import polewright.web.view.Section.Step;

/** Turns advice worded for a terminal, with a tag on each line, into steps. */
final class TaggedLines {
    private static final Pattern TAGGED = Pattern.compile("([A-Z]{3,6}) +(.*)");

    private static final Set<String> TYPED = Set.of("Then", "Else");

    private TaggedLines() {}

    /** In order; commands to type at a terminal are left out. */
    static List<Step> steps(List<String> lines) {
        List<Step> steps = new ArrayList<>();
        for (String line : lines) {
            Matcher tagged = TAGGED.matcher(line);
            if (tagged.matches()) {
                steps.add(new Step(
                        word(tagged.group(1)), capitalised(tagged.group(2).strip())));
            } else if (!steps.isEmpty()) {
                Step last = steps.remove(steps.size() - 1);
                steps.add(new Step(last.tag(), last.text() + " " + line.strip()));
            } else {
                steps.add(new Step("", line.strip()));
            }
        }
        return steps.stream().filter(step -> !TYPED.contains(step.tag())).toList();
    }

    /** Line by line: an untagged line after a tagged one stays separate. */
    static List<Step> lines(List<String> lines) {
        return lines.stream()
                .map(line -> {
                    Matcher tagged = TAGGED.matcher(line);
                    return tagged.matches()
                            ? new Step(
                                    word(tagged.group(1)),
                                    capitalised(tagged.group(2).strip()))
                            : new Step("", line.strip());
                })
                .toList();
    }

    /** {@code Care} of {@code CARE}. */
    static String word(String tag) {
        return tag.charAt(0) + tag.substring(1).toLowerCase(java.util.Locale.ROOT);
    }

    static String capitalised(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
