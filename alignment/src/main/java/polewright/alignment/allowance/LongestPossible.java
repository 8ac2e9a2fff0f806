package polewright.alignment.allowance;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.RightAscensionDrive;

/** The longest duration that any axis would allow for an item of work that cannot be met as it is. */
final class LongestPossible {
    private static final double SHORTEST_SECONDS = 1;
    private static final double GOOD_TO = 1.01;

    private LongestPossible() {}

    /**
     * The longest single exposure without excessive trailing; for a field that leaves the frame, the longest series;
     * for a visual observation, the longest stay. Good to 1 %, rounded down; empty if shorter than a second. If an
     * imaging run fails for more than one cause, only the given one is considered.
     */
    static Optional<Duration> of(ApparentSky sky, RightAscensionDrive drive, WorkItem item, LimitCause cause) {
        AxesAboutPole axes = AxesAboutPole.of(sky.site());
        Function<Duration, WorkItem> withDuration = length -> withDuration(item, cause, length);
        double low = SHORTEST_SECONDS;
        double high = seconds(wanted(item, cause));
        if (high <= low || !possible(sky, drive, axes, withDuration.apply(duration(low)), cause)) {
            return Optional.empty();
        }
        while (high / low > GOOD_TO) {
            double middle = Math.sqrt(low * high);
            if (possible(sky, drive, axes, withDuration.apply(duration(middle)), cause)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Optional.of(duration(low));
    }

    private static boolean possible(
            ApparentSky sky, RightAscensionDrive drive, AxesAboutPole axes, WorkItem item, LimitCause cause) {
        return ZoneFinder.canBeMet(asked(sky, drive, item, cause), axes);
    }

    /** A shorter exposure does not keep a field in its frame, and a shorter series does not shorten a star's trail. */
    private static List<MotionLimit> asked(
            ApparentSky sky, RightAscensionDrive drive, WorkItem item, LimitCause cause) {
        if (item instanceof ImagingRun shot) {
            return cause == LimitCause.LEAVES_FRAME
                    ? ItemLimits.fieldDrift(sky, drive, shot)
                    : ItemLimits.trails(sky, drive, shot);
        }
        return ItemLimits.of(sky, drive, item);
    }

    private static Duration wanted(WorkItem item, LimitCause cause) {
        if (item instanceof ImagingRun shot) {
            return cause == LimitCause.LEAVES_FRAME ? shot.total() : shot.subExposure();
        }
        return ((VisualObservation) item).stay();
    }

    private static WorkItem withDuration(WorkItem item, LimitCause cause, Duration length) {
        if (item instanceof ImagingRun shot) {
            return cause == LimitCause.LEAVES_FRAME ? shot.withTotal(length) : shot.withSubExposure(length);
        }
        return ((VisualObservation) item).withStay(length);
    }

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1000.0;
    }

    private static Duration duration(double seconds) {
        return Duration.ofMillis((long) (seconds * 1000));
    }
}
