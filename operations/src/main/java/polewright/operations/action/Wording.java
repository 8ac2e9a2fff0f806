package polewright.operations.action;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How terminal and pages name arguments and actions: {@code --per} and {@code polewright clamp} in the terminal, the labels of
 * field and form on a page. Messages of actions name them in braces, so that they fit both.
 */
public interface Wording {
    /** The name of an argument of the action that is being entered. */
    String argument(String name);

    /** The name of another action. */
    String action(String id);

    /** A message with its names filled in; braces around anything else stay. */
    default String of(String message) {
        return Names.PATTERN
                .matcher(message)
                .replaceAll(found -> Matcher.quoteReplacement(
                        found.group(1) == null ? argument(found.group(2)) : action(found.group(2))));
    }

    /** The pattern of names in braces. */
    final class Names {
        private static final Pattern PATTERN = Pattern.compile("\\{(do:)?([a-z][a-z0-9-]*)\\}");

        private Names() {}
    }
}
