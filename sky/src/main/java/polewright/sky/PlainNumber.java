package polewright.sky;

import java.math.BigDecimal;
import java.math.MathContext;

/** A number as a person would write it in a sentence: four significant figures, no trailing zeros, no exponent. */
public final class PlainNumber {
    private static final MathContext FOUR_FIGURES = new MathContext(4);

    private PlainNumber() {}

    public static String of(double value) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "not a number" : "infinity";
        }
        return new BigDecimal(value).round(FOUR_FIGURES).stripTrailingZeros().toPlainString();
    }
}
