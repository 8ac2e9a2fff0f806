package polewright.alignment.fix;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/** How large a χ² chance makes, by the number of figures in it. */
final class ChiSquareLimits {
    private static final double ONE_IN_A_THOUSAND = 1e-3;
    private static final double ONE_IN_TWENTY = 0.05;
    // Asked for at every step, and slow to work out.
    private static final Map<Integer, Double> ONCE_IN_A_THOUSAND = new ConcurrentHashMap<>();
    private static final Map<Integer, Double> ONCE_IN_TWENTY = new ConcurrentHashMap<>();

    private ChiSquareLimits() {}

    /** What chance exceeds once in a thousand: beyond it something is wrong. */
    static double onceInAThousand(int figures) {
        return ONCE_IN_A_THOUSAND.computeIfAbsent(figures, n -> exceeded(n, ONE_IN_A_THOUSAND));
    }

    /** What chance exceeds once in twenty: an explanation must fit at least so well. */
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
