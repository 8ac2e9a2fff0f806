package polewright.planning.seasons;

import java.time.Instant;
import java.util.Optional;

/**
 * How the axis goes in one direction as time goes on, on the sky.
 *
 * @param arcminPerMonth steadily, east or up positive; a month is a twelfth of 365.25 days
 * @param sigmaPerMonth 1 sigma of that
 * @param isShown whether the data show it at all: chance would show as much less than once in a hundred times
 * @param scatterArcmin 1 sigma of what comes and goes from night to night beside that and beside the sightings' own
 *     uncertainty
 * @param swing to and fro with the year, where the data justify that
 */
public record AxisTrend(
        double arcminPerMonth, double sigmaPerMonth, boolean isShown, double scatterArcmin, Optional<Swing> swing) {
    /** How far it goes from one time to another, arcminutes. */
    public double arcmin(Instant from, Instant to) {
        return arcminPerMonth * (YearlyTime.months(to) - YearlyTime.months(from))
                + swing.map(s -> s.arcmin(to) - s.arcmin(from)).orElse(0.0);
    }

    /**
     * To and fro with the year.
     *
     * @param arcmin half of the way from one end to the other
     * @param sigmaArcmin 1 sigma of that
     * @param greatestAt when in the year it is farthest east or up, as a share of the year since the 1st of January
     */
    public record Swing(double arcmin, double sigmaArcmin, double greatestAt) {
        /** How far it is from its middle at some time, arcminutes. */
        double arcmin(Instant at) {
            return arcmin * Math.cos(YearlyTime.yearRad(at) - 2 * Math.PI * greatestAt);
        }
    }
}
