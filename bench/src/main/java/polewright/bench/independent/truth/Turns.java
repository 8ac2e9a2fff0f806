package polewright.bench.independent.truth;

/**
 * Turns of both screws, clockwise positive.
 *
 * @param azimuth all of the azimuth screw's together
 * @param azimuthBack the last leg of it, 0 when it was turned straight
 * @param altitude all of the altitude screw's together
 * @param altitudeBack the last leg of it
 */
public record Turns(double azimuth, double azimuthBack, double altitude, double altitudeBack) {
    public static final Turns NONE = new Turns(0, 0, 0, 0);

    public static Turns straight(double azimuth, double altitude) {
        return new Turns(azimuth, 0, altitude, 0);
    }

    /** All of it the other way round. */
    public Turns reversed() {
        return new Turns(-azimuth, -azimuthBack, -altitude, -altitudeBack);
    }

    /** Each on the other screw. */
    @SuppressWarnings("ArgumentSelectionDefectChecker")
    public Turns exchanged() {
        return new Turns(altitude, altitudeBack, azimuth, azimuthBack);
    }
}
