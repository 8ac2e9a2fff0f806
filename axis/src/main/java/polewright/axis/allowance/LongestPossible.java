package polewright.axis.allowance;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Function;
import polewright.axis.rig.RightAscensionDrive;
import polewright.axis.work.Look;
import polewright.axis.work.Shot;
import polewright.axis.work.WorkItem;

/** How long an item of work that no axis can meet might last, were an axis chosen for it alone. */
final class LongestPossible {
    private static final double SHORTEST_SECONDS = 1;
    private static final double GOOD_TO = 1.01;

    private LongestPossible() {}

    /**
     * The longest single exposure; of a field that leaves the frame the longest series; of a look the longest stay. To
     * 1 %, rounded down; empty when not even a second.
     */
    static Optional<Duration> of(SeenSky sky, RightAscensionDrive drive, WorkItem item, Cause cause) {
        AxesAboutPole axes = AxesAboutPole.of(sky.site());
        Function<Duration, WorkItem> lasting = length -> lasting(item, cause, length);
        double low = SHORTEST_SECONDS;
        double high = seconds(wanted(item, cause));
        if (high <= low || !possible(sky, drive, axes, lasting.apply(duration(low)))) {
            return Optional.empty();
        }
        while (high / low > GOOD_TO) {
            double middle = Math.sqrt(low * high);
            if (possible(sky, drive, axes, lasting.apply(duration(middle)))) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Optional.of(duration(low));
    }

    private static boolean possible(SeenSky sky, RightAscensionDrive drive, AxesAboutPole axes, WorkItem item) {
        return ZoneFinder.canBeMet(ItemLimits.of(sky, drive, item), axes);
    }

    private static Duration wanted(WorkItem item, Cause cause) {
        if (item instanceof Shot shot) {
            return cause == Cause.LEAVES_FRAME ? shot.total() : shot.subExposure();
        }
        return ((Look) item).stay();
    }

    private static WorkItem lasting(WorkItem item, Cause cause, Duration length) {
        if (item instanceof Shot shot) {
            return cause == Cause.LEAVES_FRAME ? shot.withTotal(length) : shot.withSubExposure(length);
        }
        return ((Look) item).withStay(length);
    }

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1000.0;
    }

    private static Duration duration(double seconds) {
        return Duration.ofMillis((long) (seconds * 1000));
    }
}
