package polewright.drawing.chart;

import java.util.Comparator;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * A star visible to the eye, as a starting point for finding a target.
 *
 * @param star the star
 * @param direction its apparent direction
 * @param distance on the sky to the target
 * @param towardTarget direction from the star to the target in the view when the star is centred: (right, up), a unit
 *     vector
 */
public record GuideStar(NamedStar star, RefractedDirection direction, Angle distance, Vector2D towardTarget) {
    // The faintest star that is easy to identify by eye from the edge of a town (common practice).
    private static final double EASY_MAGNITUDE = 3.6;
    private static final Angle LOWEST = Angle.ofDegrees(8);
    // One magnitude is worth some degrees of distance: a bright star a little farther off is better.
    private static final double DEGREES_PER_MAGNITUDE = 2;
    // End of civil twilight: before it such stars are not visible.
    private static final Angle SUN_LOW_ENOUGH = Angle.ofDegrees(-6);
    private static final Angle SAME = Angle.ofArcminutes(1);

    /** Whether it is dark enough to start from a star; by day the path from one might also pass near the Sun. */
    public static boolean areStarsOut(ObservingMoment moment) {
        return SunGuard.at(moment).sun().altitude().compareTo(SUN_LOW_ENOUGH) <= 0;
    }

    /** The best starting star; empty if none is up and visible, or if the target is that star. */
    public static Optional<GuideStar> nearest(FieldChart chart) {
        ObservingMoment moment = chart.moment();
        if (!areStarsOut(moment)) {
            return Optional.empty();
        }
        RefractedDirection target = chart.sky().middle();
        return NamedStars.bundled().all().stream()
                .filter(star ->
                        star.magnitude() <= EASY_MAGNITUDE && !star.names().isEmpty())
                .map(star -> from(star, moment.refracted(moment.apparent(star.place())), target, chart))
                .filter(guide -> guide.direction().altitude().compareTo(LOWEST) > 0)
                .min(Comparator.comparingDouble(guide -> guide.distance().degrees()
                        + DEGREES_PER_MAGNITUDE * guide.star().magnitude()))
                .filter(guide -> guide.distance().compareTo(SAME) > 0);
    }

    private static GuideStar from(
            NamedStar star, RefractedDirection direction, RefractedDirection target, FieldChart chart) {
        Vector2D toTarget = new ViewOfSky(direction, chart.sky().view()).placeOf(target);
        double distance = toTarget.getNorm();
        return new GuideStar(
                star,
                direction,
                new Angle(distance),
                distance == 0 ? Vector2D.ZERO : toTarget.scalarMultiply(1 / distance));
    }
}
