package polewright.axis.fix;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/** How large a χ² chance makes, by the number of figures in it. */
final class Chance {
    private static final double ONE_IN_A_THOUSAND = 1e-3;
    private static final double ONE_IN_TWENTY = 0.05;
    // A sighting has one or two figures: asked for at every step, and slow to work out.
    private static final double[] ONCE_IN_A_THOUSAND = {
        0, exceeded(1, ONE_IN_A_THOUSAND), exceeded(2, ONE_IN_A_THOUSAND)
    };
    private static final double[] ONCE_IN_TWENTY = {0, exceeded(1, ONE_IN_TWENTY), exceeded(2, ONE_IN_TWENTY)};

    private Chance() {}

    /** What chance exceeds once in a thousand: beyond it something is wrong. */
    static double onceInAThousand(int figures) {
        return figures < ONCE_IN_A_THOUSAND.length ? ONCE_IN_A_THOUSAND[figures] : exceeded(figures, ONE_IN_A_THOUSAND);
    }

    /** What chance exceeds once in twenty: an explanation must fit at least so well. */
    static double onceInTwenty(int figures) {
        return figures < ONCE_IN_TWENTY.length ? ONCE_IN_TWENTY[figures] : exceeded(figures, ONE_IN_TWENTY);
    }

    private static double exceeded(int figures, double probability) {
        return new ChiSquaredDistribution(figures).inverseCumulativeProbability(1 - probability);
    }
}
