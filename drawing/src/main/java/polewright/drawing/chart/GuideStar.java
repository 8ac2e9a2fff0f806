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
 * A star that the eye finds, to start from on the way to a target.
 *
 * @param star which
 * @param direction where it is seen
 * @param distance on the sky to the target
 * @param way from the star to the target as the view shows it with the star in the middle: (right, up), a unit
 */
public record GuideStar(NamedStar star, RefractedDirection direction, Angle distance, Vector2D way) {
    // As faint as a star may be and still be picked out by eye from a town's edge (common practice).
    private static final double EASY_MAGNITUDE = 3.6;
    private static final Angle LOWEST = Angle.ofDegrees(8);
    // A magnitude is worth some degrees of way: better a bright star a little farther off.
    private static final double DEGREES_PER_MAGNITUDE = 2;
    // Civil twilight's end: before it such stars are not out.
    private static final Angle SUN_LOW_ENOUGH = Angle.ofDegrees(-6);
    private static final Angle SAME = Angle.ofArcminutes(1);

    /** Whether it is dark enough to start from a star; by day the way to one may pass the Sun as well. */
    public static boolean areStarsOut(ObservingMoment moment) {
        return SunGuard.at(moment).sun().altitude().compareTo(SUN_LOW_ENOUGH) <= 0;
    }

    /** The best to start from; empty when none is out or up, or the target is that star. */
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
