package polewright.bench.independent.truth;

/**
 * Turns of both screws, clockwise positive.
 *
 * @param azimuth net turns of the azimuth screw
 * @param azimuthBack its last leg, 0 when it was turned directly
 * @param altitude net turns of the altitude screw
 * @param altitudeBack its last leg
 */
public record Turns(double azimuth, double azimuthBack, double altitude, double altitudeBack) {
    public static final Turns NONE = new Turns(0, 0, 0, 0);

    public static Turns straight(double azimuth, double altitude) {
        return new Turns(azimuth, 0, altitude, 0);
    }

    /** All of it in the opposite sense. */
    public Turns reversed() {
        return new Turns(-azimuth, -azimuthBack, -altitude, -altitudeBack);
    }

    /** Each on the other screw. */
    @SuppressWarnings("ArgumentSelectionDefectChecker")
    public Turns exchanged() {
        return new Turns(altitude, altitudeBack, azimuth, azimuthBack);
    }
}
