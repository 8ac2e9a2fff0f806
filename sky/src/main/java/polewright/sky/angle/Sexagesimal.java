package polewright.sky.angle;

import java.util.Locale;

/**
 * Angles written and read in base sixty.
 *
 * <p>Writing rounds the whole value to the last printed place first, so that 59.999 seconds never prints as 60.
 */
public final class Sexagesimal {
    private Sexagesimal() {}

    /** Degrees, minutes and seconds with sign: {@code -06°43′11.6″}. */
    public static String degrees(Angle angle, int secondDecimals) {
        return (angle.radians() < 0 ? "-" : "+") + parts(Math.abs(angle.degrees()), secondDecimals, "°", "′", "″");
    }

    /** Hours, minutes and seconds in [0, 24 h): {@code 23h09m16.6s}. */
    public static String hours(Angle angle, int secondDecimals) {
        double hours = angle.wrappedPositive().hours();
        long scale = pow10(secondDecimals);
        long ticks = Math.round(hours * 3600 * scale) % (24L * 3600 * scale);
        return parts(ticks / (3600.0 * scale), secondDecimals, "h", "m", "s");
    }

    private static String parts(double units, int decimals, String unitMark, String minuteMark, String secondMark) {
        long scale = pow10(decimals);
        long ticks = Math.round(units * 3600 * scale);
        long whole = ticks / (3600 * scale);
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
