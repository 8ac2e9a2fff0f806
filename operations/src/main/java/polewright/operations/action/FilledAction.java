package polewright.operations.action;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * An action, filled in: a logged entry to be corrected, or what corrects a mistake.
 *
 * @param typed by the names of its arguments
 */
public record FilledAction(Action action, Map<String, String> typed) {
    public FilledAction {
        typed = Map.copyOf(typed);
    }

    /** The same with this argument filled in too. */
    public FilledAction with(Argument<?> argument, String value) {
        Map<String, String> more = new LinkedHashMap<>(typed);
        more.put(argument.name(), value);
        return new FilledAction(action, more);
    }
}
