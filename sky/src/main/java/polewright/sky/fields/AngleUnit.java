package polewright.sky.fields;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import polewright.sky.angle.Angle;

/**
 * The unit given by the ending of a key, and exact decimal text for angles in it.
 *
 * <p>An angle is stored in radians, and about one double in ten is not the product of a double in degrees with π/180.
 * So that every angle reads back to the same bits, a number with more digits than a double is multiplied in full, while
 * one that fits a double gives exactly what {@link Angle}'s own factory method would.
 */
public enum AngleUnit {
    DEGREES("_deg", Angle.ofDegrees(1)),
    ARCMINUTES("_arcmin", Angle.ofArcminutes(1)),
    ARCSECONDS("_arcsec", Angle.ofArcseconds(1));

    private static final int FEWEST_FIGURES = 15;
    private static final int MOST_FIGURES = 40;

    private final String suffix;
    private final BigDecimal radiansEach;

    AngleUnit(String suffix, Angle one) {
        this.suffix = suffix;
        this.radiansEach = new BigDecimal(one.radians());
    }

    public static AngleUnit ofKey(String key) {
        for (AngleUnit unit : values()) {
            if (key.endsWith(unit.suffix)) {
                return unit;
            }
        }
        throw new IllegalArgumentException("key " + key + " does not end in a unit of angle");
    }

    /** The number of units in a whole turn. */
    long perTurn() {
        return Math.round(2 * Math.PI / radiansEach.doubleValue());
    }

    /** The plural, lower case. */
    public String words() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The angle for a number of units.
     *
     * @param digits a finite decimal number
     */
    public Angle read(String digits) {
        return read(digits, Double.parseDouble(digits));
    }

    /** The same, given the nearest double. */
    Angle read(String digits, double nearest) {
        if (nearest == 0) {
            return new Angle(nearest);
        }
        BigDecimal exact = new BigDecimal(digits);
        if (exact.compareTo(BigDecimal.valueOf(nearest)) == 0) {
            return of(nearest);
        }
        return new Angle(exact.multiply(radiansEach).doubleValue());
    }

    /** The shortest text, from 15 digits up, that reads back to the same bits. */
    public String write(Angle angle) {
        double radians = angle.radians();
        if (radians == 0) {
            return Digits.of(radians);
        }
        BigDecimal exact = new BigDecimal(radians).divide(radiansEach, new MathContext(MOST_FIGURES));
        for (int figures = FEWEST_FIGURES; figures <= MOST_FIGURES; figures++) {
            String digits = Digits.of(exact.round(new MathContext(figures)));
            if (read(digits).radians() == radians) {
                return digits;
            }
        }
        throw new IllegalStateException("no decimal for " + radians + " radians");
    }

    private Angle of(double value) {
        return switch (this) {
            case DEGREES -> Angle.ofDegrees(value);
            case ARCMINUTES -> Angle.ofArcminutes(value);
            case ARCSECONDS -> Angle.ofArcseconds(value);
        };
    }
}
