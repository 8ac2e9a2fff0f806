package polewright.sky;

import java.math.BigDecimal;
import java.math.MathContext;

/** A number as a person would write it in a sentence: no trailing zeros, no exponent. */
public final class PlainNumber {
    private static final MathContext FOUR_FIGURES = new MathContext(4);

    /** As many as anyone types, and fewer than the conversion of degrees to radians and back disturbs. */
    private static final MathContext TYPED_FIGURES = new MathContext(10);

    private static final int MOST_READ_FIGURES = 6;
    private static final MathContext WORKED_OUT_FIGURES = new MathContext(3);

    private PlainNumber() {}

    /** A number that was worked out, to four significant figures. */
    public static String of(double value) {
        return rounded(value, FOUR_FIGURES);
    }

    /** A number that the person gave, as given: "latitude 90.0001 is beyond 90" must not lose its last figure. */
    public static String asTyped(double value) {
        return rounded(value, TYPED_FIGURES);
    }

    /**
     * A figure that was read off, as it was typed; one with more figures than a person types was worked out, and is
     * rounded to three. Never rounded to nothing.
     */
    public static String asRead(double value) {
        return isRead(value) ? asTyped(value) : rounded(value, WORKED_OUT_FIGURES);
    }

    /** Whether a value has no more figures than a person types. */
    public static boolean isRead(double value) {
        String typed = asTyped(value);
        long figures = typed.replaceFirst("^-?[0.]*", "")
                .chars()
                .filter(Character::isDigit)
                .count();
        return figures <= MOST_READ_FIGURES;
    }

    private static String rounded(double value, MathContext figures) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "not a number" : "infinity";
        }
        return new BigDecimal(value).round(figures).stripTrailingZeros().toPlainString();
    }
}
