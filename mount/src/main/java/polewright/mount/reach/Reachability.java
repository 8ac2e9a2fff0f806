package polewright.mount.reach;

import java.util.List;
import polewright.sky.time.Interval;

/** When something can be looked at. */
public sealed interface Reachability {
    /**
     * At these times.
     *
     * @param windows in order, at least one
     */
    record Reachable(List<Interval> windows) implements Reachability {
        public Reachable {
            windows = List.copyOf(windows);
        }
    }

    /**
     * Not in the whole time that was asked about.
     *
     * @param barrier what is in the way when it stands highest
     */
    record Never(Barrier barrier) implements Reachability {}
}
