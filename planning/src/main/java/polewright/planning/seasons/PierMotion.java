package polewright.planning.seasons;

import java.time.Instant;
import java.util.List;
import polewright.alignment.fix.AxisState;

/** The movement of the axis by pier and wedge over months, as far as the nights show it. */
public sealed interface PierMotion {
    /**
     * Too few data to fit a line.
     *
     * @param missing what is missing, a whole sentence without its full stop
     */
    record NotYet(String missing) implements PierMotion {}

    /**
     * A line, with a yearly oscillation if the data justify it.
     *
     * @param from start of the first drift used
     * @param to end of the last one
     * @param drifts number used
     * @param setAside outliers, which are not used
     * @param monthlyCorrection the turns, clockwise positive, that compensate one month's steady movement; for the
     *     latest night's rig
     */
    record Fitted(
            Instant from,
            Instant to,
            AxisTrend east,
            AxisTrend up,
            int drifts,
            List<NightGap.Drifted> setAside,
            AxisState.Turns monthlyCorrection)
            implements PierMotion {
        public Fitted {
            setAside = List.copyOf(setAside);
        }

        /** Whether a yearly oscillation is included. */
        public boolean isYearly() {
            return east.swing().isPresent();
        }
    }
}
