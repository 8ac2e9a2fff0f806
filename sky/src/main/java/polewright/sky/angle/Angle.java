package polewright.sky.angle;

/**
 * An angle. Any real value; nothing is wrapped unless a method says so.
 *
 * @param radians the angle in radians
 */
public record Angle(double radians) implements Comparable<Angle> {
    public static final Angle ZERO = new Angle(0);
    public static final Angle QUARTER_TURN = new Angle(Math.PI / 2);
    public static final Angle HALF_TURN = new Angle(Math.PI);

    private static final double TURN_RAD = 2 * Math.PI;
    private static final double RAD_PER_HOUR = Math.PI / 12;
    private static final double RAD_PER_ARCMIN = Math.PI / (180 * 60);
    private static final double RAD_PER_ARCSEC = Math.PI / (180 * 3600);

    public static Angle ofRadians(double radians) {
        return new Angle(radians);
    }

    public static Angle ofDegrees(double degrees) {
        return new Angle(Math.toRadians(degrees));
    }

    /** Hours of right ascension or hour angle, 15 degrees each. */
    public static Angle ofHours(double hours) {
        return new Angle(hours * RAD_PER_HOUR);
    }

    public static Angle ofArcminutes(double arcminutes) {
        return new Angle(arcminutes * RAD_PER_ARCMIN);
    }

    public static Angle ofArcseconds(double arcseconds) {
        return new Angle(arcseconds * RAD_PER_ARCSEC);
    }

    public double degrees() {
        return Math.toDegrees(radians);
    }

    public double hours() {
        return radians / RAD_PER_HOUR;
    }

    public double arcminutes() {
        return radians / RAD_PER_ARCMIN;
    }

    public double arcseconds() {
        return radians / RAD_PER_ARCSEC;
    }

    public Angle plus(Angle other) {
        return new Angle(radians + other.radians);
    }

    public Angle minus(Angle other) {
        return new Angle(radians - other.radians);
    }

    public Angle times(double factor) {
        return new Angle(radians * factor);
    }

    public Angle negated() {
        return new Angle(-radians);
    }

    public Angle abs() {
        return new Angle(Math.abs(radians));
    }

    /** The same direction in [0, 1 turn). */
    public Angle wrappedPositive() {
        double wrapped = radians - TURN_RAD * Math.floor(radians / TURN_RAD);
        // A tiny negative angle plus a whole turn rounds to the whole turn itself.
        return new Angle(wrapped >= TURN_RAD ? 0 : wrapped);
    }

    /** The same direction in [-half turn, half turn). */
    public Angle wrappedSigned() {
        if (radians < 0 && radians >= -Math.PI) {
            // Adding and removing a whole turn would cost a small angle its last digits: -2.9 would not stay -2.9.
            return this;
        }
        double wrapped = wrappedPositive().radians;
        return new Angle(wrapped >= Math.PI ? wrapped - TURN_RAD : wrapped);
    }

    public double sin() {
        return Math.sin(radians);
    }

    public double cos() {
        return Math.cos(radians);
    }

    public double tan() {
        return Math.tan(radians);
    }

    @Override
    public int compareTo(Angle other) {
        return Double.compare(radians, other.radians);
    }

    @Override
    public String toString() {
        return degrees() + "°";
    }
}
