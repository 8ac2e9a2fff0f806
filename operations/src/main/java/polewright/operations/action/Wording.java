package polewright.operations.action;

import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How terminal and pages name arguments and actions: {@code --per} and {@code polewright clamp} in the terminal, the labels of
 * field and form on a page. Messages of actions name them in braces, so that they fit both.
 */
public interface Wording {
    /** The name of an argument of the action that is being entered. */
    String argument(String name);

    /** An argument with a value for it: {@code --site 54.6,-2.9} in the terminal, the value alone on a page. */
    String entry(String name, String value);

    /** The name of another action. */
    String action(String id);

    /** A message with its names filled in; braces around anything else stay. */
    default String of(String message) {
        return Names.PATTERN.matcher(message).replaceAll(found -> Matcher.quoteReplacement(named(found)));
    }

    private String named(MatchResult found) {
        if (found.group(1) != null) {
            return action(found.group(2));
        }
        return found.group(3) == null ? argument(found.group(2)) : entry(found.group(2), found.group(3));
    }

    /** The pattern of names in braces. */
    final class Names {
        private static final Pattern PATTERN = Pattern.compile("\\{(do:)?([a-z][a-z0-9-]*)(?:=([^{}]*))?\\}");

        private Names() {}
    }
}
