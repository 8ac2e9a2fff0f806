package polewright.sky;

import java.math.BigDecimal;
import java.math.MathContext;

/** A number as a person would write it in a sentence: no trailing zeros, no exponent. */
public final class PlainNumber {
    private static final MathContext FOUR_FIGURES = new MathContext(4);

    /** As many figures as are ever typed, but few enough to hide the rounding of degrees to radians and back. */
    private static final MathContext TYPED_FIGURES = new MathContext(10);

    private static final int MOST_READ_FIGURES = 6;
    private static final MathContext COMPUTED_FIGURES = new MathContext(3);

    private PlainNumber() {}

    /** A computed number, to four significant figures. */
    public static String of(double value) {
        return rounded(value, FOUR_FIGURES);
    }

    /** A number typed by the person, as typed: "latitude 90.0001 is beyond 90" must keep its last figure. */
    public static String asTyped(double value) {
        return rounded(value, TYPED_FIGURES);
    }

    /**
     * A reading as it was typed. A value with more figures than a person types must have been computed and is rounded
     * to three. Never rounded to zero.
     */
    public static String asRead(double value) {
        return isRead(value) ? asTyped(value) : rounded(value, COMPUTED_FIGURES);
    }

    /** Whether a value has no more figures than a person would type. */
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
