package polewright.bench.independent.truth;

import java.time.Duration;
import java.time.Instant;

/**
 * The path of a star in the eyepiece of a mount that turns about its own axis at the sidereal rate.
 *
 * <p>All in the frame of the tube, which the drive carries along: the star's later direction is rotated back by the
 * drive's rotation, and projected on the plane perpendicular to the tube. The star's trail with the drive off is
 * derived from its apparent directions just before and just after, including refraction.
 */
public final class TrackedStar {
    /** 2π in 86164.0905 s of mean time. */
    public static final double SIDEREAL_RAD_PER_SECOND = 2 * Math.PI / 86164.0905;

    private static final Duration TRAIL_HALF = Duration.ofMinutes(1);

    private TrackedStar() {}

    /**
     * How far a star moves north of the line on which it was set, radians.
     *
     * @param axis direction of the upper end of the mount's axis
     * @param at when it is set on the line
     */
    public static double northward(
            Place place, Air air, double[] axis, Star star, Instant at, Duration watched, ReticleLine line) {
        double[] northEnd = Directions.plus(new double[3], place.sign(), axis);
        double[] start = SeenSky.of(place, at, air).direction(star);
        double[] end = SeenSky.of(place, at.plus(watched), air).direction(star);
        double seconds = watched.toMillis() / 1000.0;
        // The drive turned the tube westward, clockwise about the northern end: rotated back, the tube is where it
        // was.
        double[] inTheTube = Directions.turned(end, northEnd, SIDEREAL_RAD_PER_SECOND * seconds);
        double[] north = switch (line) {
            case BY_TRAIL -> Directions.cross(west(place, air, star, at, start), start);
            case BY_SLOW_MOTION -> Directions.squareTo(start, northEnd);
        };
        return Math.atan2(Directions.dot(inTheTube, north), Directions.dot(inTheTube, start));
    }

    /** The direction in which the star moves with the drive off. */
    private static double[] west(Place place, Air air, Star star, Instant at, double[] start) {
        double[] before = SeenSky.of(place, at.minus(TRAIL_HALF), air).direction(star);
        double[] after = SeenSky.of(place, at.plus(TRAIL_HALF), air).direction(star);
        return Directions.squareTo(start, Directions.plus(after, -1, before));
    }
}
