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

/** The inverse of the allowance: how long an exposure may be with the axis where it is. */
public final class ExposureLimits {
    /** Longer single exposures are not asked about. */
    public static final Duration LONGEST = Duration.ofHours(3);

    // A one-sided 95 % along each principal axis of what is not known.
    private static final double SIGMAS = 1.65;
    private static final double FIRST_TRY_SECONDS = 60;
    private static final double SHORTEST_SECONDS = 0.1;
    private static final double GOOD_TO = 1.01;
    private static final int TRIES = 20;
    // Beyond this an offset is no offset but a mount facing elsewhere.
    private static final double MOST_OFFSET_ARCMIN = 2400;

    private ExposureLimits() {}

    /**
     * The longest single exposures.
     *
     * @param unguided nobody correcting; zero when not even a tenth of a second
     * @param guided on a star
     */
    public record Limit(Duration unguided, Duration guided) {}

    /**
     * How long single exposures may be, anywhere in the shot's region, with no star's trail longer than its tolerance:
     * with the axis at the offset, and 1.65 sigma from it either way along both principal axes of the covariance. Exact
     * motions; to 1 %, rounded down; at most {@link #LONGEST}. Without a guide star of the shot's own, one in the middle
     * of the picture is assumed. That the field stays in the frame is not asked here.
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

    /** Trails grow about evenly, so each try says where the next should be; halving in ratio keeps it from straying. */
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
