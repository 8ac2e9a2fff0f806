package polewright.alignment.fix;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/** Critical values of χ² by degrees of freedom. */
final class ChiSquareLimits {
    private static final double ONE_IN_A_THOUSAND = 1e-3;
    private static final double ONE_IN_TWENTY = 0.05;
    // Needed at every step, and slow to compute.
    private static final Map<Integer, Double> ONCE_IN_A_THOUSAND = new ConcurrentHashMap<>();
    private static final Map<Integer, Double> ONCE_IN_TWENTY = new ConcurrentHashMap<>();

    private ChiSquareLimits() {}

    /** Exceeded by chance once in 1000: a larger χ² means that something is wrong. */
    static double onceInAThousand(int figures) {
        return ONCE_IN_A_THOUSAND.computeIfAbsent(figures, n -> exceeded(n, ONE_IN_A_THOUSAND));
    }

    /** Exceeded by chance once in 20: an explanation must fit at least this well. */
    static double onceInTwenty(int figures) {
        return ONCE_IN_TWENTY.computeIfAbsent(figures, n -> exceeded(n, ONE_IN_TWENTY));
    }

    private static double exceeded(int figures, double probability) {
        if (figures == 0) {
            return 0;
        }
        return new ChiSquaredDistribution(figures).inverseCumulativeProbability(1 - probability);
    }
}
