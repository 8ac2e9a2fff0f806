package polewright.operations.action;

import java.util.LinkedHashMap;
import java.util.Map;
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

    /**
     * Another action.
     *
     * @param typed what to give for some of its arguments; three dots mark a value that the person has to fill in
     */
    String action(String id, Map<String, String> typed);

    /** A message with its names filled in; braces around anything else stay. */
    default String of(String message) {
        return Names.PATTERN.matcher(message).replaceAll(found -> Matcher.quoteReplacement(named(found)));
    }

    private String named(MatchResult found) {
        if (found.group(1) != null) {
            return action(found.group(1), Names.typed(found.group(2)));
        }
        return found.group(4) == null ? argument(found.group(3)) : entry(found.group(3), found.group(4));
    }

    /** Names in braces: {@code {site}}, {@code {site=54.6,-2.9}}, {@code {do:clamp}}, {@code {do:retime first=3 add=60}}. */
    final class Names {
        private static final Pattern PATTERN = Pattern.compile(
                "\\{do:([a-z][a-z0-9-]*)((?: [a-z-]+=[^ {}]+)*)\\}|\\{([a-z][a-z0-9-]*)(?:=([^{}]*))?\\}");

        private Names() {}

        private static Map<String, String> typed(String pairs) {
            Map<String, String> typed = new LinkedHashMap<>();
            for (String pair : pairs.strip().split(" ", -1)) {
                int equals = pair.indexOf('=');
                if (equals > 0) {
                    typed.put(pair.substring(0, equals), pair.substring(equals + 1));
                }
            }
            return typed;
        }
    }
}
