package polewright.planning.seasons;

import java.time.Instant;
import java.util.List;
import polewright.alignment.fix.AxisState;

/** How pier and wedge carry the axis away over months, as far as the nights tell. */
public sealed interface PierMotion {
    /**
     * Too little to put a line through.
     *
     * @param missing what there should be, a whole sentence without its full stop
     */
    record NotYet(String missing) implements PierMotion {}

    /**
     * A line, with a yearly swing where the data justify one.
     *
     * @param from the beginning of the first drift that counts
     * @param to the end of the last
     * @param drifts how many count
     * @param setAside drifts unlike all the others, which do not
     * @param undoingAMonth the turns, clockwise positive, that take back what a month's steady motion does; of the latest
     *     night's rig
     */
    record Fitted(
            Instant from,
            Instant to,
            AxisTrend east,
            AxisTrend up,
            int drifts,
            List<NightGap.Drifted> setAside,
            AxisState.Turns undoingAMonth)
            implements PierMotion {
        public Fitted {
            setAside = List.copyOf(setAside);
        }

        /** Whether the year counts. */
        public boolean isYearly() {
            return east.swing().isPresent();
        }
    }
}
