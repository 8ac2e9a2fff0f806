package polewright.operations.action;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import polewright.operations.input.FileInput;
import polewright.operations.input.NumberInput;
import polewright.operations.input.WordInput;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;

/**
 * How an argument is filled in, and the type of its value.
 *
 * @param <T> the value
 */
public sealed interface ArgumentType<T> {
    /**
     * The value of what was typed.
     *
     * @throws InputRefused if it cannot be used
     */
    T parse(String typed);

    /** Its placeholder in the help of a command, in capitals; if empty, the name of the argument is used. */
    String placeholder();

    /** Its unit; {@link Unit#NONE} unless it is a figure. */
    default Unit unit() {
        return Unit.NONE;
    }

    /** The options to choose from; empty if anything may be typed. */
    default List<Option> options() {
        return List.of();
    }

    /** What choosing nothing means; empty if undefined. */
    default String otherwise() {
        return "";
    }

    /** Whether it is given by its name alone. */
    default boolean isTick() {
        return false;
    }

    /** Whether it takes the rest of a command line. */
    default boolean isText() {
        return false;
    }

    /** Whether it takes words up to the next option, with or without quotes. */
    default boolean takesWords() {
        return false;
    }

    /** Whether it is a file on this computer, which only the terminal offers. */
    default boolean isFile() {
        return false;
    }

    /** The value if only its name is given; empty if it needs one. */
    default String alone() {
        return "";
    }

    /** Whether a comma in it means a decimal point: many phones' decimal keyboards have no point. */
    default boolean isDecimal() {
        return false;
    }

    /** Which keyboard a phone should show, a value of HTML's {@code inputmode}; empty if any will do. */
    default String keyboard() {
        return "";
    }

    /** What was typed into one field, as words of a command. */
    default List<String> asWords(String typed) {
        return List.of(typed);
    }

    /**
     * A number, typed as it is read.
     *
     * @param least the smallest that is accepted
     * @param most the largest that is accepted
     * @param isSigned whether it is often negative, so that a keyboard for it needs a minus sign
     * @param remedy what to do if it is outside: an imperative without capital or full stop
     */
    record Figure(Unit unit, double least, double most, boolean isSigned, String remedy)
            implements ArgumentType<Double> {
        /** A number without bounds that is rarely negative. */
        public static Figure of(Unit unit) {
            return new Figure(unit, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, false, "");
        }

        /** A number without bounds that is often negative. */
        public static Figure signed(Unit unit) {
            return new Figure(unit, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, true, "");
        }

        /** The same number with inclusive bounds. */
        public Figure between(double from, double to, String remedyOutside) {
            return new Figure(unit, from, to, isSigned, remedyOutside);
        }

        @Override
        public Double parse(String typed) {
            double number = NumberInput.of(typed);
            if (number >= least && number <= most) {
                return number;
            }
            String value = PlainNumber.asTyped(number) + (unit == Unit.NONE ? "" : " " + unit.words());
            throw new InputRefused(value + limit(), remedy);
        }

        private String limit() {
            return -least == most
                    ? " is beyond " + PlainNumber.asTyped(most)
                    : " is outside " + PlainNumber.asTyped(least) + " to " + PlainNumber.asTyped(most);
        }

        @Override
        public String placeholder() {
            return unit.placeholder();
        }

        @Override
        public boolean isDecimal() {
            return true;
        }

        /** Some phones' decimal keyboards have no minus sign. */
        @Override
        public String keyboard() {
            return isSigned ? "text" : "decimal";
        }
    }

    /**
     * A figure that may also be given in another way: {@code 2.5} arcseconds, or {@code 2px}.
     *
     * @param alone the value if only its name is given; empty if it needs one
     */
    record FigureOr<T>(Unit unit, String alone, Function<String, T> parser) implements ArgumentType<T> {
        @Override
        public T parse(String typed) {
            return parser.apply(typed);
        }

        @Override
        public String placeholder() {
            return unit.placeholder();
        }

        @Override
        public boolean isDecimal() {
            return true;
        }
    }

    /** A file on this computer. */
    record FileName(String placeholder) implements ArgumentType<Path> {
        @Override
        public Path parse(String typed) {
            return new FileInput().convert(typed);
        }

        @Override
        public boolean isFile() {
            return true;
        }
    }

    /** A whole number, such as that of an event. */
    record Whole(String placeholder) implements ArgumentType<Long> {
        @Override
        public Long parse(String typed) {
            return new NumberInput.Whole().convert(typed);
        }

        @Override
        public String keyboard() {
            return "numeric";
        }
    }

    /**
     * One or more words with a meaning of their own: a star, a time, turns of a screw.
     *
     * @param parser converts the words to a value, or refuses them
     */
    record Words<T>(String placeholder, Function<String, T> parser) implements ArgumentType<T> {
        /** The words themselves. */
        public static Words<String> plain(String placeholder) {
            return new Words<>(placeholder, Function.identity());
        }

        @Override
        public T parse(String typed) {
            return parser.apply(typed);
        }
    }

    /** Free text; in a terminal, the rest of the line. */
    record Text(String placeholder) implements ArgumentType<String> {
        @Override
        public String parse(String typed) {
            return typed;
        }

        @Override
        public boolean isText() {
            return true;
        }
    }

    /**
     * Several words, each a separate argument.
     *
     * @param separator regular expression that separates them in a single field
     */
    record Several(String placeholder, String separator) implements ArgumentType<List<String>> {
        @Override
        public List<String> parse(String typed) {
            return asWords(typed.strip());
        }

        @Override
        public List<String> asWords(String typed) {
            return List.of(typed.split(separator));
        }

        @Override
        public boolean isText() {
            return true;
        }
    }

    /**
     * A choice from a list.
     *
     * @param otherwise what choosing none of them means; empty if one must be chosen
     */
    record Choice<T>(String placeholder, String otherwise, List<Option> options, Function<String, T> parser)
            implements ArgumentType<T> {
        public Choice {
            options = List.copyOf(options);
        }

        /**
         * One of the values of an enum, in its order.
         *
         * @param labels each as it is shown
         */
        public static <E extends Enum<E>> Choice<E> of(
                Class<E> type, String placeholder, String otherwise, Map<E, String> labels) {
            List<Option> options = labels.entrySet().stream()
                    .sorted(Map.Entry.comparingByKey())
                    .map(label -> new Option(WordInput.words(label.getKey()).get(0), label.getValue()))
                    .toList();
            return new Choice<>(placeholder, otherwise, options, new WordInput<>(type)::convert);
        }

        /** Unquoted, if options consist of several words. */
        @Override
        public boolean takesWords() {
            return options.stream().anyMatch(option -> option.value().contains(" "));
        }

        /** The same with other options on offer; what can be typed does not change. */
        public Choice<T> offering(String noneOfThem, List<Option> others) {
            return new Choice<>(placeholder, noneOfThem, others, parser);
        }

        @Override
        public T parse(String typed) {
            return parser.apply(typed);
        }
    }

    /**
     * One option of a choice.
     *
     * @param value as it is typed
     * @param label as it is shown
     */
    record Option(String value, String label) {}

    /** Yes or no. */
    record Tick() implements ArgumentType<Boolean> {
        /** The value of a ticked box. */
        public static final String YES = "yes";

        @Override
        public Boolean parse(String typed) {
            return typed.equals(YES);
        }

        @Override
        public String placeholder() {
            return "";
        }

        @Override
        public boolean isTick() {
            return true;
        }
    }
}
