package polewright.alignment.allowance;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** The inverse of the allowance: the longest exposure for a given axis. */
public final class ExposureLimits {
    /** Upper end of the search. */
    public static final Duration LONGEST = Duration.ofHours(3);

    // One-sided 95 % along each principal axis of the offset's covariance.
    private static final double SIGMAS = 1.65;
    private static final double FIRST_TRY_SECONDS = 60;
    private static final double SHORTEST_SECONDS = 0.1;
    private static final double GOOD_TO = 1.01;
    private static final int TRIES = 20;
    // Beyond this the mount is not roughly polar-aligned at all.
    private static final double MOST_OFFSET_ARCMIN = 2400;

    private ExposureLimits() {}

    /**
     * The longest single exposures.
     *
     * @param unguided without corrections; zero if shorter than a tenth of a second
     * @param guided on a star
     */
    public record Limit(Duration unguided, Duration guided) {}

    /**
     * The longest single exposures for which no star's trail, anywhere in the run's region, exceeds its tolerance.
     * Evaluated with the axis at the offset and 1.65 sigma from it in both directions along both principal axes of the
     * covariance. Motions are exact; the result is good to 1 %, rounded down, at most {@link #LONGEST}. If the run has
     * no guide star of its own, one in the middle of the picture is assumed. Whether the field stays in the frame is
     * not considered.
     */
    public static Limit longest(
            Site site, Weather weather, Rig rig, ImagingRun shot, AxisOffset offset, OffsetCovariance covariance) {
        ApparentSky sky = new ApparentSky(site, weather);
        List<CandidateAxis> axes = axes(site, offset, covariance);
        Guiding guided = shot.guiding() instanceof Guiding.Guided ? shot.guiding() : new Guiding.Guided(Angle.ZERO);
        return new Limit(
                longest(seconds -> mostUsed(sky, rig, shot.withGuiding(new Guiding.Unguided()), seconds, axes)),
                longest(seconds -> mostUsed(sky, rig, shot.withGuiding(guided), seconds, axes)));
    }

    private static double mostUsed(
            ApparentSky sky, Rig rig, ImagingRun shot, double seconds, List<CandidateAxis> axes) {
        double most = 0;
        for (MotionLimit limit : ItemLimits.trails(sky, rig.drive(), shot.withSubExposure(duration(seconds)))) {
            for (CandidateAxis axis : axes) {
                most = Math.max(most, limit.share(axis));
            }
        }
        return most;
    }

    /**
     * Trail length grows almost linearly, so each try predicts the next; geometric bisection keeps the search bounded.
     */
    private static Duration longest(DoubleUnaryOperator shareOfSeconds) {
        double longest = LONGEST.toSeconds();
        double low = 0;
        double high = longest;
        double seconds = FIRST_TRY_SECONDS;
        for (int i = 0; i < TRIES && high > Math.max(SHORTEST_SECONDS, low * GOOD_TO); i++) {
            double share = shareOfSeconds.applyAsDouble(seconds);
            if (share <= 1) {
                low = seconds;
            } else {
                high = seconds;
            }
            if (low == longest) {
                break;
            }
            double aimed = seconds * (share <= 1 ? 1.002 : 0.998) / share;
            boolean early = i < 6;
            double between = low == 0 ? high / 8 : Math.sqrt(low * high);
            seconds = early && aimed > low && aimed < high ? aimed : early && aimed >= longest ? longest : between;
        }
        return low < SHORTEST_SECONDS ? Duration.ZERO : duration(low);
    }

    private static List<CandidateAxis> axes(Site site, AxisOffset offset, OffsetCovariance covariance) {
        Vector2D mean = new Vector2D(offset.east().arcminutes(), offset.up().arcminutes());
        double turn =
                Math.atan2(2 * covariance.eastUpArcmin2(), covariance.eastEastArcmin2() - covariance.upUpArcmin2()) / 2;
        Vector2D longWay = new Vector2D(Math.cos(turn), Math.sin(turn))
                .scalarMultiply(SIGMAS * covariance.largestSigma().arcminutes());
        Vector2D shortWay = new Vector2D(-Math.sin(turn), Math.cos(turn))
                .scalarMultiply(SIGMAS * covariance.smallestSigma().arcminutes());
        List<CandidateAxis> axes = new ArrayList<>();
        for (Vector2D tried :
                List.of(mean, mean.add(longWay), mean.subtract(longWay), mean.add(shortWay), mean.subtract(shortWay))) {
            double distance = tried.getNorm();
            axes.add(CandidateAxis.of(
                    site, distance > MOST_OFFSET_ARCMIN ? tried.scalarMultiply(MOST_OFFSET_ARCMIN / distance) : tried));
        }
        return axes;
    }

    private static Duration duration(double seconds) {
        return Duration.ofMillis(Math.max(1, (long) (seconds * 1000)));
    }
}
