package polewright.report.text;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import polewright.mount.rig.ClockDirection;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Angles as people write them: degrees if large, arcminutes if small, with significant figures only. */
public final class AngleWords {
    private static final String[] POINTS = {
        "north", "north-north-east", "north-east", "east-north-east", "east", "east-south-east", "south-east",
        "south-south-east", "south", "south-south-west", "south-west", "west-south-west", "west", "west-north-west",
        "north-west", "north-north-west"
    };

    private static final int COORDINATE_DECIMALS = 5;
    private static final int MOST_READ_DECIMALS = 3;

    private AngleWords() {}

    /** Size without sign: {@code 2.4°}, {@code 35′}, {@code 4.2′}. */
    public static String size(Angle angle) {
        double arcmin = Math.abs(angle.arcminutes());
        if (arcmin >= 99.5) {
            return String.format(Locale.ROOT, "%.1f°", arcmin / 60);
        }
        if (arcmin < 0.05) {
            return "0′";
        }
        return String.format(Locale.ROOT, arcmin >= 9.95 ? "%.0f′" : "%.1f′", arcmin);
    }

    /** An angle's size in the unit that suits another. */
    static String sizeLike(Angle other, Angle angle) {
        boolean inDegrees = Math.abs(other.arcminutes()) >= 99.5;
        return inDegrees ? String.format(Locale.ROOT, "%.1f°", Math.abs(angle.degrees())) : size(angle);
    }

    /** {@code 12.3°}, one decimal. */
    public static String degrees(Angle angle) {
        // Adding zero turns a rounded -0.0 into 0.0.
        return String.format(Locale.ROOT, "%.1f°", Math.rint(angle.degrees() * 10) / 10 + 0.0);
    }

    /**
     * An angle as it was typed: {@code 12.0°}, {@code 12.25°}, {@code 0.04°}. One with more decimals than a reading has
     * was computed, and gets one decimal.
     */
    static String read(Angle angle) {
        String figures = PlainNumber.asTyped(angle.degrees());
        int decimals = figures.contains(".") ? figures.length() - 1 - figures.indexOf('.') : 0;
        return decimals > MOST_READ_DECIMALS ? degrees(angle) : (decimals == 0 ? figures + ".0" : figures) + "°";
    }

    /** An azimuth or bearing in [0, 360): 359.97 is 0.0. */
    public static String bearing(Angle angle) {
        double tenths = Math.rint(angle.wrappedPositive().degrees() * 10) % 3600;
        return String.format(Locale.ROOT, "%.1f°", tenths / 10);
    }

    /** {@code 54.60° N, 2.9025° W, 240 m}: for comparison with what was typed. */
    public static String site(Site site) {
        return coordinate(site.latitude())
                + (site.isNorthern() ? " N, " : " S, ")
                + coordinate(site.longitude())
                + (site.longitude().radians() >= 0 ? " E, " : " W, ")
                + String.format(Locale.ROOT, "%.0f m", site.heightMetres());
    }

    /** At least two decimals, and as many as were typed up to five, which is a metre on the ground. */
    private static String coordinate(Angle angle) {
        BigDecimal degrees = BigDecimal.valueOf(angle.abs().degrees())
                .setScale(COORDINATE_DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return degrees.setScale(Math.max(2, degrees.scale()), RoundingMode.UNNECESSARY)
                        .toPlainString()
                + "°";
    }

    /** The nearest of sixteen compass points. */
    public static String compassPoint(Angle azimuth) {
        int point = (int) Math.rint(azimuth.wrappedPositive().degrees() / 22.5) % 16;
        return POINTS[point];
    }

    /** Hour angle: {@code 1h30m west}. */
    public static String hourAngle(Angle hourAngle) {
        long minutes = Math.round(Math.abs(hourAngle.wrappedSigned().hours()) * 60);
        String size = String.format(Locale.ROOT, "%dh%02dm", minutes / 60, minutes % 60);
        if (minutes == 0) {
            return "0h00m (on the meridian)";
        }
        return size + (hourAngle.wrappedSigned().radians() > 0 ? " west of the meridian" : " east of the meridian");
    }

    /** A typed direction: {@code 4.25 o'clock} if {@link #clock} cannot express it; a computed one, to half hours. */
    static String clockAsTyped(ClockDirection toward) {
        double hours = toward.hours();
        return Math.abs(hours * 2 - Math.rint(hours * 2)) < 1e-9 || !PlainNumber.isRead(hours)
                ? clock(toward.clockwiseFromTop())
                : PlainNumber.asRead(hours) + " o'clock";
    }

    /** Half hours of the clock face: {@code 11 o'clock}, {@code half past 4}. */
    public static String clock(Angle clockwiseFromTop) {
        long halves = Math.round(clockwiseFromTop.wrappedPositive().degrees() / 15) % 24;
        long hour = halves / 2 == 0 ? 12 : halves / 2;
        return halves % 2 == 0 ? hour + " o'clock" : "half past " + hour;
    }
}
