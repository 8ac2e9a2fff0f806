package polewright.alignment.fix;

import java.util.Optional;

/**
 * What the sightings of a night alone tell of one figure: what was known of it beforehand is taken out again, so that
 * several nights can be put together without counting it each time.
 *
 * @param value in the figure's own unit
 * @param variance in that unit, squared
 */
public record NightAsEntered(double value, double variance) {
    // A figure known a twentieth better than before has hardly been told.
    private static final double LEAST_TOLD = 0.05;

    /** A Gaussian is a product: precision after less precision before is what was told in between. */
    static Optional<NightAsEntered> between(
            double meanBefore, double varianceBefore, double meanAfter, double varianceAfter) {
        if (!(varianceAfter > 0 && varianceAfter < varianceBefore * (1 - LEAST_TOLD))) {
            return Optional.empty();
        }
        double precision = 1 / varianceAfter - 1 / varianceBefore;
        return Optional.of(new NightAsEntered(
                (meanAfter / varianceAfter - meanBefore / varianceBefore) / precision, 1 / precision));
    }

    NightAsEntered blurredBy(double sigma) {
        return new NightAsEntered(value, variance + sigma * sigma);
    }
}
