package polewright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.ISetter;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType;

/** The arguments of an action as options and parameters of its command. */
final class ActionOptions {
    private ActionOptions() {}

    /**
     * Adds them to a command.
     *
     * @param values receives what is typed, by the names of the arguments
     */
    static void add(CommandSpec command, List<Argument<?>> arguments, Map<String, Object> values) {
        int position = 0;
        for (Argument<?> argument : arguments) {
            if (argument.isPositional()) {
                command.addPositional(positional(argument, position++, values));
            } else {
                command.addOption(option(argument, values));
            }
        }
    }

    private static OptionSpec option(Argument<?> argument, Map<String, Object> values) {
        OptionSpec.Builder option = OptionSpec.builder("--" + argument.name())
                .paramLabel(label(argument))
                .description(description(argument))
                .required(argument.isRequired())
                .type(type(argument))
                .auxiliaryTypes(type(argument) == List.class ? String.class : type(argument))
                .converters(converters(argument))
                .completionCandidates(words(argument))
                .setter(new Keeping(argument, values));
        // A tick has the parser's own arity, which also accepts --camera=false.
        if (!argument.type().isTick()) {
            option.arity(arity(argument));
        }
        if (argument.type().takesWords()) {
            option.parameterConsumer(new FreeTextWords(argument));
        }
        if (!argument.type().alone().isEmpty()) {
            option.fallbackValue(argument.type().alone());
        }
        return option.build();
    }

    private static String arity(Argument<?> argument) {
        if (argument.type().takesWords()) {
            return "1..*";
        }
        return argument.type().alone().isEmpty() ? "1" : "0..1";
    }

    private static PositionalParamSpec positional(Argument<?> argument, int position, Map<String, Object> values) {
        boolean takesRest = argument.type().isText();
        String least = argument.isRequired() ? "1" : "0";
        return PositionalParamSpec.builder()
                .index(position + (takesRest ? "..*" : ""))
                .paramLabel(label(argument))
                .description(description(argument))
                .required(argument.isRequired())
                .arity(least + (takesRest ? "..*" : "..1"))
                .type(type(argument))
                .auxiliaryTypes(type(argument) == List.class ? String.class : type(argument))
                .converters(converters(argument))
                .completionCandidates(words(argument))
                .setter(new Keeping(argument, values))
                .build();
    }

    private static Class<?> type(Argument<?> argument) {
        if (argument.type().isTick()) {
            return boolean.class;
        }
        if (argument.type().isFile()) {
            return Path.class;
        }
        return argument.type().isText() || argument.type().takesWords() ? List.class : Object.class;
    }

    /** What the Tab key offers; null if anything may be typed. */
    private static @Nullable List<String> words(Argument<?> argument) {
        List<String> words = argument.type().options().stream()
                .map(ArgumentType.Option::value)
                .toList();
        return words.isEmpty() ? null : words;
    }

    /** None for a tick or text, which the parser converts itself. */
    private static ITypeConverter<?>[] converters(Argument<?> argument) {
        return type(argument) == Object.class || argument.type().isFile()
                ? new ITypeConverter<?>[] {typed -> argument.type().parse(typed)}
                : new ITypeConverter<?>[0];
    }

    private static String label(Argument<?> argument) {
        String placeholder = argument.type().placeholder();
        return argument.isPositional() || placeholder.isEmpty()
                ? argument.name().toUpperCase(Locale.ROOT)
                : placeholder;
    }

    /** What it asks for, how to read it, and what applies if it is left out. */
    private static String description(Argument<?> argument) {
        List<String> sentences = new ArrayList<>();
        sentences.add(asked(argument));
        if (!argument.hint().isEmpty()) {
            sentences.add(ended(argument.hint()));
        }
        String otherwise =
                argument.type() instanceof ArgumentType.Choice<?> choice ? choice.otherwise() : argument.otherwise();
        if (!otherwise.isEmpty()) {
            sentences.add("Default: " + otherwise + ".");
        }
        // The parser would read a percent sign as a format.
        return String.join(" ", sentences).replace("%", "%%");
    }

    private static String asked(Argument<?> argument) {
        List<ArgumentType.Option> options = argument.type().options();
        if (!options.isEmpty()) {
            return argument.label() + ": "
                    + options.stream().map(ActionOptions::option).collect(Collectors.joining(", ")) + ".";
        }
        String unit = argument.type().unit().words();
        boolean isNamed = argument.label().toLowerCase(Locale.ROOT).contains(unit);
        return argument.label() + (isNamed ? "" : ", in " + unit) + ".";
    }

    private static String option(ArgumentType.Option option) {
        return option.label().equals(option.value()) ? option.value() : option.value() + " (" + option.label() + ")";
    }

    private static String ended(String sentence) {
        return sentence.endsWith(".") ? sentence : sentence + ".";
    }

    /** Stores a parsed value. */
    private record Keeping(Argument<?> argument, Map<String, Object> values) implements ISetter {
        @Override
        public <T> @Nullable T set(@Nullable T value) {
            if (value == null) {
                values.remove(argument.name());
            } else if (value instanceof List<?> words) {
                values.put(
                        argument.name(),
                        new TypedWords(words.stream().map(String::valueOf).toList()));
            } else {
                values.put(argument.name(), value);
            }
            return value;
        }
    }
}
