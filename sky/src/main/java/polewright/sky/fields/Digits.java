package polewright.sky.fields;

import java.math.BigDecimal;

/** Numbers as decimal text that reads back to the same bits. */
public final class Digits {
    private static final int MOST_ZEROS = 12;

    private Digits() {}

    public static String of(double value) {
        if (value == 0) {
            // BigDecimal has no negative zero.
            return 1 / value < 0 ? "-0.0" : "0";
        }
        return of(BigDecimal.valueOf(value));
    }

    /** Without an exponent unless that would be longer. */
    public static String of(BigDecimal value) {
        BigDecimal bare = value.stripTrailingZeros();
        boolean readable = -MOST_ZEROS < bare.scale() && bare.scale() - bare.precision() < MOST_ZEROS;
        return readable ? bare.toPlainString() : bare.toString();
    }
}
