package polewright.bench.independent.truth;

import java.time.Duration;
import java.time.Instant;
import java.util.random.RandomGenerator;

/**
 * An observer with a compass, a wedge's scale, a finder and a reticle, who reads each to the usual steps: whole
 * degrees of the compass, half degrees of the scale, twentieths of the field, half hours of the clock and quarters of
 * a division.
 *
 * <p>The errors are those given in the documentation (compass 3°, scale 1°, a twentieth of the field in each
 * direction, a quarter of a division, 1 sigma, all common practice), and include rounding.
 *
 * @param air on the line of sight
 * @param scatter errors relative to the documented ones; 1 if those are right
 * @param random source of the errors
 */
public record Observer(Air air, double scatter, RandomGenerator random) {
    private static final double COMPASS_SIGMA_DEG = 3;
    private static final double COMPASS_STEP_DEG = 1;
    private static final double SCALE_SIGMA_DEG = 1;
    private static final double SCALE_STEP_DEG = 0.5;
    private static final double FIELD_SIGMA = 0.05;
    private static final double FIELD_STEP = 0.05;
    private static final double CLOCK_STEP_HOURS = 0.5;
    private static final double DRIFT_SIGMA_DIVISIONS = 0.25;
    private static final double DRIFT_STEP_DIVISIONS = 0.25;
    private static final double CLOCK_FACE_HOURS = 12;

    /** Bearing of the upper end of the axis, from magnetic north, degrees in [0, 360). */
    public double compassDeg(Wedge wedge, double declinationDeg) {
        double true0 = Math.toDegrees(Directions.azimuth(wedge.axis())) - declinationDeg;
        double read = read(true0, COMPASS_SIGMA_DEG, COMPASS_STEP_DEG);
        return ((read % 360) + 360) % 360;
    }

    public double scaleDeg(Wedge wedge) {
        return read(Math.toDegrees(Directions.altitude(wedge.axis())), SCALE_SIGMA_DEG, SCALE_STEP_DEG);
    }

    /** The distance of a star from the centre of rotation, radians, without error. */
    public double fromStillPoint(Wedge wedge, Star star, Instant at) {
        return Directions.angle(wedge.axis(), SeenSky.of(wedge.place(), at, air).direction(star));
    }

    /**
     * The position of a star relative to the centre of rotation, by the sine rule for the triangle of axis, star and
     * zenith.
     */
    public StarInField stillPoint(Wedge wedge, Star star, Instant at, double fieldRad, ViewShown view) {
        double[] seen = SeenSky.of(wedge.place(), at, air).direction(star);
        double[] axis = wedge.axis();
        double altitude = Directions.altitude(axis);
        double toTheRight = Directions.azimuth(seen) - Directions.azimuth(axis);
        double right = Math.cos(Directions.altitude(seen)) * Math.sin(toTheRight);
        double up = Math.sin(Directions.altitude(seen)) * Math.cos(altitude)
                - Math.cos(Directions.altitude(seen)) * Math.sin(altitude) * Math.cos(toTheRight);
        double distance = Directions.angle(axis, seen) / fieldRad;
        double fromTop = Math.atan2(right, up);
        // Together, the steps of a twentieth of the field and half an hour of the clock round off as much as this, a
        // few tenths of the field out.
        double sigma = scatter * Math.sqrt(FIELD_SIGMA * FIELD_SIGMA - FIELD_STEP * FIELD_STEP / 10);
        double x = view.right(distance * Math.sin(fromTop)) + sigma * random.nextGaussian();
        double y = view.up(distance * Math.cos(fromTop)) + sigma * random.nextGaussian();
        double clock = Math.atan2(x, y) / (2 * Math.PI) * CLOCK_FACE_HOURS;
        double rounded = CLOCK_STEP_HOURS * Math.rint(clock / CLOCK_STEP_HOURS);
        return new StarInField(
                FIELD_STEP * Math.rint(Math.hypot(x, y) / FIELD_STEP),
                rounded <= 0 ? rounded + CLOCK_FACE_HOURS : rounded);
    }

    /** How far a star drifted north across a reticle's line, in divisions. */
    public double driftDivisions(
            Wedge wedge, Star star, Instant at, Duration watched, double divisionRad, ReticleLine line) {
        double north = TrackedStar.northward(wedge.place(), air, wedge.axis(), star, at, watched, line);
        return read(north / divisionRad, DRIFT_SIGMA_DIVISIONS, DRIFT_STEP_DIVISIONS);
    }

    /** The rounding error, a step over √12, is part of the documented error. */
    private double read(double value, double sigma, double step) {
        double drawn = Math.sqrt(Math.pow(scatter * sigma, 2) - step * step / 12);
        return step * Math.rint((value + drawn * random.nextGaussian()) / step);
    }
}
