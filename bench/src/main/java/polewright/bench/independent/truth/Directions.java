package polewright.bench.independent.truth;

/** Directions as unit vectors of east, north and up. */
public final class Directions {
    private Directions() {}

    /** By azimuth from north through east, and altitude. */
    public static double[] of(double azimuth, double altitude) {
        return new double[] {
            Math.sin(azimuth) * Math.cos(altitude), Math.cos(azimuth) * Math.cos(altitude), Math.sin(altitude)
        };
    }

    public static double azimuth(double[] direction) {
        return Math.atan2(direction[0], direction[1]);
    }

    public static double altitude(double[] direction) {
        return Math.atan2(direction[2], Math.hypot(direction[0], direction[1]));
    }

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    /** {@code a + factor · b}. */
    static double[] plus(double[] a, double factor, double[] b) {
        return new double[] {a[0] + factor * b[0], a[1] + factor * b[1], a[2] + factor * b[2]};
    }

    static double[] unit(double[] a) {
        double length = Math.sqrt(dot(a, a));
        return new double[] {a[0] / length, a[1] / length, a[2] / length};
    }

    /** The part of {@code a} perpendicular to the direction {@code b}, normalised. */
    static double[] squareTo(double[] b, double[] a) {
        return unit(plus(a, -dot(a, b), b));
    }

    /** Rotated about a direction, counter-clockwise as seen from its tip (Rodrigues' formula). */
    static double[] turned(double[] a, double[] about, double angle) {
        double[] across = cross(about, a);
        double along = dot(about, a) * (1 - Math.cos(angle));
        double[] result = new double[3];
        for (int i = 0; i < 3; i++) {
            result[i] = a[i] * Math.cos(angle) + across[i] * Math.sin(angle) + about[i] * along;
        }
        return result;
    }

    /** The angle between two directions. */
    public static double angle(double[] a, double[] b) {
        double[] across = cross(a, b);
        return Math.atan2(Math.sqrt(dot(across, across)), dot(a, b));
    }
}
