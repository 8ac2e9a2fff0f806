package polewright.mount.reach;

import java.util.List;
import polewright.sky.time.Interval;

/** When something can be observed. */
public sealed interface Reachability {
    /**
     * Within these intervals.
     *
     * @param windows in order, at least one
     */
    record Reachable(List<Interval> windows) implements Reachability {
        public Reachable {
            windows = List.copyOf(windows);
        }
    }

    /**
     * Not at all during the interval considered.
     *
     * @param barrier what prevents it at its highest
     */
    record Never(Barrier barrier) implements Reachability {}
}
