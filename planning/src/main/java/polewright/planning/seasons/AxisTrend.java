package polewright.planning.seasons;

import java.time.Instant;
import java.util.Optional;

/**
 * The trend of the axis in one direction on the sky.
 *
 * @param arcminPerMonth steady rate, east or up positive; a month is a twelfth of 365.25 days
 * @param sigmaPerMonth its 1 sigma
 * @param isShown whether the rate is significant: chance would produce as much less than once in a hundred times
 * @param scatterArcmin 1 sigma of the random movement from night to night, in addition to that and to the sightings'
 *     own uncertainty
 * @param swing yearly oscillation, if the data justify it
 */
public record AxisTrend(
        double arcminPerMonth, double sigmaPerMonth, boolean isShown, double scatterArcmin, Optional<Swing> swing) {
    /** The movement from one time to another, arcminutes. */
    public double arcmin(Instant from, Instant to) {
        return arcminPerMonth * (YearlyTime.months(to) - YearlyTime.months(from))
                + swing.map(s -> s.arcmin(to) - s.arcmin(from)).orElse(0.0);
    }

    /**
     * A yearly oscillation.
     *
     * @param arcmin amplitude, half of peak-to-peak
     * @param sigmaArcmin its 1 sigma
     * @param greatestAt when in the year it is farthest east or up, as a fraction of the year since 1 January
     */
    public record Swing(double arcmin, double sigmaArcmin, double greatestAt) {
        /** Its deviation from the mean at some time, arcminutes. */
        double arcmin(Instant at) {
            return arcmin * Math.cos(YearlyTime.yearRad(at) - 2 * Math.PI * greatestAt);
        }
    }
}
