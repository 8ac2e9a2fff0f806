package polewright.alignment.fix;

import java.util.Set;

/**
 * How much farther tonight's readings of the sky by eye scatter than their stated sigmas: poor seeing, wind, cold hands.
 *
 * <p>One factor for the night, never below 1, with a conjugate prior. Were every figure measured against a known axis, its
 * square would be (ν s₀² + Σ χ²) / (ν + n) for n figures. The axis is not known and the screws move it, so each χ² is that
 * of a figure against the ones before it, whose own uncertainty does not grow with the factor: the factor is the one at which
 * all figures together are most probable (the innovations of a Kalman filter, F. C. Schweppe, "Evaluation of likelihood
 * functions for Gaussian signals", IEEE Trans. Inf. Theory 11 (1965) 61).
 *
 * @param factor by which stated sigmas are multiplied
 * @param weight how many figures of evidence are behind it
 */
record NightScatter(double factor, double weight) {
    /** As stated, which is believed until about as many figures say otherwise. */
    static final NightScatter AS_STATED = new NightScatter(1, 8);

    // Finer steps change nothing that a person would do.
    private static final double STEP = 1.1;
    // Less than that comes by chance in many a night that is as stated.
    private static final double LEAST = 1.2;
    // Beyond that readings are not poor but wrong.
    private static final double MOST = 4;

    /** This and what the believed readings of a night add to it. */
    NightScatter learnedFrom(Interpretation account) {
        // A jump of the axis at a turn says more about the screws than about the readings.
        NightSmoother smoother = account.smoother().doubtingScrews();
        int figures = smoother.figuresByEye(seq -> !account.setAside().contains(seq));
        double larger = best(smoother, account, figures, STEP);
        double best = larger > factor ? larger : best(smoother, account, figures, 1 / STEP);
        return new NightScatter(best < LEAST ? 1 : best, weight + figures);
    }

    /** The most probable factor on one side of this one. */
    private double best(NightSmoother smoother, Interpretation account, int figures, double step) {
        double best = factor;
        double least = cost(smoother, account, figures, best);
        for (double next = factor * step; next <= MOST && next > LEAST / STEP; next *= step) {
            double cost = cost(smoother, account, figures, next);
            if (cost >= least) {
                break;
            }
            best = next;
            least = cost;
        }
        return best;
    }

    /** Twice the negative logarithm of probability, but for a constant. */
    private double cost(NightSmoother smoother, Interpretation account, int figures, double tried) {
        Set<Long> setAside = account.setAside();
        double ofNight = smoother.scattering(tried).costOfEvidence(setAside, account.night());
        double ratio = tried / factor;
        return ofNight + 2 * figures * Math.log(tried) + weight * (2 * Math.log(ratio) + 1 / (ratio * ratio));
    }
}
