package polewright.operations.action;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import polewright.operations.input.NumberInput;
import polewright.operations.input.WordInput;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;

/**
 * How an argument is filled in, and the value that this gives.
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

    /** What stands for it where a command is explained, in capitals; empty for the name of the argument. */
    String placeholder();

    /** Its unit; {@link Unit#NONE} if it is no figure. */
    default Unit unit() {
        return Unit.NONE;
    }

    /** What is on offer; empty if anything may be typed. */
    default List<Option> options() {
        return List.of();
    }

    /** What it means to choose nothing; empty if it says nothing about that. */
    default String otherwise() {
        return "";
    }

    /** Whether it is given by its name alone. */
    default boolean isTick() {
        return false;
    }

    /** Whether it takes all the words that are left on a line. */
    default boolean isText() {
        return false;
    }

    /** Whether a comma in it is a decimal point: the decimal keyboards of many phones have no point. */
    default boolean isDecimal() {
        return false;
    }

    /** Which keyboard a phone should show, a value of HTML's {@code inputmode}; empty if any will do. */
    default String keyboard() {
        return "";
    }

    /** The words of a command that it becomes, from what was typed into one field. */
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
        /** A number that is seldom negative; what it stands for sets its bounds. */
        public static Figure of(Unit unit) {
            return new Figure(unit, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, false, "");
        }

        /** A number that is often negative; what it stands for sets its bounds. */
        public static Figure signed(Unit unit) {
            return new Figure(unit, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, true, "");
        }

        /** The same within bounds, which are included. */
        public Figure between(double from, double to, String elsewise) {
            return new Figure(unit, from, to, isSigned, elsewise);
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

    /** A whole number: of an event, say. */
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
     * One or several words that together mean something: a star, a time, turns of a screw.
     *
     * @param parser gives the value, or refuses
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

    /** Words of a sentence: in a terminal, all that are left on the line. */
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
     * Several words, each an argument of its own.
     *
     * @param separator what separates them where they are typed into one field, a regular expression
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
    }

    /**
     * One of a few.
     *
     * @param otherwise what it means to choose none of them; empty if one must be chosen
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
                    .map(label -> new Option(word(label.getKey()), label.getValue()))
                    .toList();
            return new Choice<>(placeholder, otherwise, options, new WordInput<>(type)::convert);
        }

        /** The same with other options on offer; what can be typed does not change. */
        public Choice<T> offering(String noneOfThem, List<Option> others) {
            return new Choice<>(placeholder, noneOfThem, others, parser);
        }

        @Override
        public T parse(String typed) {
            return parser.apply(typed);
        }

        private static String word(Enum<?> value) {
            return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
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
        /** What is typed into a form's field for it. */
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
