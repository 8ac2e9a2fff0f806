package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.FilledAction;
import polewright.operations.action.TypedEntry;

/** An action as it would be typed in a shell. */
public final class TypedCommand {
    private static final String MISSING = "…";

    private TypedCommand() {}

    /** The command line of an action that is filled in. */
    public static String of(FilledAction filled) {
        return of(filled.action().command(), filled.action().arguments(), filled.typed());
    }

    /**
     * The command line, with three dots for each required argument that is missing or cannot be used.
     *
     * @param command the words that it begins with
     * @param typed by the names of the arguments; other names are ignored
     */
    public static String of(List<String> command, List<Argument<?>> arguments, Map<String, String> typed) {
        List<String> words = new ArrayList<>(command);
        List<String> positionals = new ArrayList<>();
        for (Argument<?> argument : arguments) {
            String value = typed.getOrDefault(argument.name(), "").strip();
            boolean isMissing = value.isEmpty() ? argument.isRequired() : !TypedEntry.isUsable(argument, value);
            if (value.isEmpty() && !isMissing) {
                continue;
            }
            String entry = isMissing ? MISSING : TypedEntry.asTyped(argument, value);
            if (argument.isPositional()) {
                positionals.addAll(argument.type().asWords(entry));
            } else {
                words.addAll(option(argument, entry));
            }
        }
        if (positionals.stream().anyMatch(word -> word.startsWith("-"))) {
            words.add("--");
        }
        words.addAll(positionals);
        return "polewright " + words.stream().map(TypedCommand::quoted).collect(Collectors.joining(" "));
    }

    private static List<String> option(Argument<?> argument, String value) {
        if (argument.type().isTick()) {
            return value.equals(Tick.YES) ? List.of("--" + argument.name()) : List.of();
        }
        List<String> values = argument.type().asWords(value);
        if (values.size() == 1) {
            return List.of("--" + argument.name() + "=" + value);
        }
        List<String> words = new ArrayList<>(List.of("--" + argument.name()));
        words.addAll(values);
        return words;
    }

    private static String quoted(String word) {
        int equals = word.startsWith("--") ? word.indexOf('=') + 1 : 0;
        String value = word.substring(equals);
        boolean plain = !value.isEmpty()
                && value.chars().allMatch(c -> Character.isLetterOrDigit(c) || "-_=.,:+/…".indexOf(c) >= 0);
        return word.substring(0, equals) + (plain ? value : "'" + value.replace("'", "'\\''") + "'");
    }
}
