package polewright.mount.reach;

import java.util.List;
import polewright.sky.time.Interval;

/** When something can be looked at. */
public sealed interface ReachOutcome {
    /**
     * At these times.
     *
     * @param windows in order, at least one
     */
    record Reachable(List<Interval> windows) implements ReachOutcome {
        public Reachable {
            windows = List.copyOf(windows);
        }
    }

    /**
     * Not in the whole time that was asked about.
     *
     * @param barrier what is in the way when it stands highest
     */
    record Never(Barrier barrier) implements ReachOutcome {}
}
