package polewright.sky.angle;

import java.util.Locale;

/**
 * Formats angles in base sixty.
 *
 * <p>The whole value is rounded to the last printed place first, so that 59.999 seconds never prints as 60.
 */
public final class Sexagesimal {
    private static final long SECONDS_PER_UNIT = 3600;

    private Sexagesimal() {}

    /** Degrees, minutes and seconds with sign: {@code -06°43′11.6″}. A value that rounds to zero has a plus. */
    public static String degrees(Angle angle, int secondDecimals) {
        long ticks = Math.round(Math.abs(angle.degrees()) * SECONDS_PER_UNIT * pow10(secondDecimals));
        String sign = angle.radians() < 0 && ticks != 0 ? "-" : "+";
        return sign + parts(ticks, secondDecimals, "°", "′", "″");
    }

    /** Hours, minutes and seconds in [0, 24 h): {@code 23h09m16.6s}. */
    public static String hours(Angle angle, int secondDecimals) {
        long ticksPerHour = SECONDS_PER_UNIT * pow10(secondDecimals);
        long ticks = Math.round(angle.wrappedPositive().hours() * ticksPerHour) % (24 * ticksPerHour);
        return parts(ticks, secondDecimals, "h", "m", "s");
    }

    /** From ticks of one unit of the last printed decimal of a second. */
    private static String parts(long ticks, int decimals, String unitMark, String minuteMark, String secondMark) {
        long scale = pow10(decimals);
        long whole = ticks / (SECONDS_PER_UNIT * scale);
        long minutes = ticks / (60 * scale) % 60;
        long secondTicks = ticks % (60 * scale);
        String seconds = decimals == 0
                ? String.format(Locale.ROOT, "%02d", secondTicks)
                : String.format(Locale.ROOT, "%02d.%0" + decimals + "d", secondTicks / scale, secondTicks % scale);
        return String.format(
                Locale.ROOT, "%02d%s%02d%s%s%s", whole, unitMark, minutes, minuteMark, seconds, secondMark);
    }

    private static long pow10(int decimals) {
        if (decimals < 0 || decimals > 9) {
            throw new IllegalArgumentException("decimals " + decimals + " outside 0 to 9");
        }
        long scale = 1;
        for (int i = 0; i < decimals; i++) {
            scale *= 10;
        }
        return scale;
    }
}
