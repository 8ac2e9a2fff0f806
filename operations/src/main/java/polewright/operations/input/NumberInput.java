package polewright.operations.input;

import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;

/**
 * A plain decimal number: {@code 5}, {@code -0.25}, {@code +3.}; the one place where a typed number is parsed. Java's
 * own parser also accepts {@code 0x1p3}, {@code 1e2}, {@code 5d} and {@code NaN}.
 */
public final class NumberInput implements ITypeConverter<Double> {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)");
    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?\\d+,\\d+");

    @Override
    public Double convert(String typed) {
        return of(typed);
    }

    /**
     * The number that was typed.
     *
     * @throws InputRefused when it is anything but a plain decimal number
     */
    public static double of(String typed) {
        String text = typed.strip();
        if (WITH_COMMA.matcher(text).matches()) {
            throw new InputRefused("'" + typed + "' has a comma", "write a decimal point: " + text.replace(',', '.'));
        }
        if (!NUMBER.matcher(text).matches()) {
            throw new InputRefused("'" + typed + "' is not a number", "write digits, such as 5 or 2.5");
        }
        double number = Double.parseDouble(text);
        if (!Double.isFinite(number)) {
            throw new InputRefused("a number of " + text.length() + " digits is too large", "check it");
        }
        return number;
    }

    /** Whether {@link #of} accepts it. */
    public static boolean isNumber(String typed) {
        return NUMBER.matcher(typed.strip()).matches();
    }

    /** A whole number: {@code 12}. */
    public static final class Whole implements ITypeConverter<Long> {
        private static final Pattern WHOLE = Pattern.compile("[+-]?\\d{1,18}");

        @Override
        public Long convert(String typed) {
            if (!WHOLE.matcher(typed.strip()).matches()) {
                throw new InputRefused("'" + typed + "' is not a whole number", "write digits, such as 7");
            }
            return Long.valueOf(typed.strip());
        }
    }

    /** A whole number of everyday size, such as a count or a port. */
    public static final class Count implements ITypeConverter<Integer> {
        private static final Whole WHOLE = new Whole();

        @Override
        public Integer convert(String typed) {
            long number = WHOLE.convert(typed);
            if (number != (int) number) {
                throw new InputRefused(
                        "'" + typed + "' is far too large a number", "check it, and write a smaller one");
            }
            return (int) number;
        }
    }
}
