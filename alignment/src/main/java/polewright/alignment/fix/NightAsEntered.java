package polewright.alignment.fix;

import java.util.Optional;

/**
 * The estimate of one parameter from the sightings of a single night, with the prior removed, so that several nights
 * can be combined without counting the prior more than once.
 *
 * @param value in the parameter's own unit
 * @param variance in that unit squared
 */
public record NightAsEntered(double value, double variance) {
    // If the variance falls by less than a twentieth, the night has hardly measured the parameter.
    private static final double LEAST_IMPROVEMENT = 0.05;

    /** Divides the posterior Gaussian by the prior: the night's precision is the difference of the two. */
    static Optional<NightAsEntered> between(
            double meanBefore, double varianceBefore, double meanAfter, double varianceAfter) {
        if (!(varianceAfter > 0 && varianceAfter < varianceBefore * (1 - LEAST_IMPROVEMENT))) {
            return Optional.empty();
        }
        double precision = 1 / varianceAfter - 1 / varianceBefore;
        return Optional.of(new NightAsEntered(
                (meanAfter / varianceAfter - meanBefore / varianceBefore) / precision, 1 / precision));
    }

    NightAsEntered widenedBy(double sigma) {
        return new NightAsEntered(value, variance + sigma * sigma);
    }
}
