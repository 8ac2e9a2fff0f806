package polewright.alignment.fix;

import java.util.Set;

/**
 * Tonight's scatter of readings by eye relative to their stated sigmas: poor seeing, wind, cold hands.
 *
 * <p>One factor for the night, never below 1, with a conjugate prior. If every reading were compared with a known axis, the
 * square of the factor would be (ν s₀² + Σ χ²) / (ν + n) for n readings, where s₀ is the factor so far and ν its weight. The
 * axis is unknown and the screws move it. The variance of each innovation therefore has a part that does not scale with the
 * factor (the prior and the screws), and this closed form does not apply: the factor is the one at which all innovations of
 * the Kalman filter together are most probable (F. C. Schweppe, "Evaluation of likelihood functions for Gaussian signals",
 * IEEE Trans. Inf. Theory 11 (1965) 61).
 *
 * @param factor by which stated sigmas are multiplied
 * @param weight the number of measurements behind it
 */
record NightScatter(double factor, double weight) {
    /** The stated sigmas, with the weight of eight measurements. */
    static final NightScatter AS_STATED = new NightScatter(1, 8);

    // Finer steps would not change what the observer does.
    private static final double STEP = 1.1;
    // A smaller factor is common by chance when the stated sigmas are right.
    private static final double LEAST = 1.2;
    // With a larger factor the readings would be wrong rather than poor.
    private static final double MOST = 4;

    /** This factor updated by the believed readings of a night. */
    NightScatter learnedFrom(Interpretation interpretation) {
        // A jump of the axis at a turn is evidence about the screws more than about the readings.
        NightSmoother smoother = interpretation.smoother().doubtingScrews();
        int figures = smoother.figuresByEye(seq -> !interpretation.setAside().contains(seq));
        double larger = best(smoother, interpretation, figures, STEP);
        double best = larger > factor ? larger : best(smoother, interpretation, figures, 1 / STEP);
        return new NightScatter(best < LEAST ? 1 : best, weight + figures);
    }

    /** The most probable factor on one side of this one. */
    private double best(NightSmoother smoother, Interpretation interpretation, int figures, double step) {
        double best = factor;
        double least = cost(smoother, interpretation, figures, best);
        for (double next = factor * step; next <= MOST && next > LEAST / STEP; next *= step) {
            double cost = cost(smoother, interpretation, figures, next);
            if (cost >= least) {
                break;
            }
            best = next;
            least = cost;
        }
        return best;
    }

    /** −2 ln of the posterior density, up to a constant. */
    private double cost(NightSmoother smoother, Interpretation interpretation, int figures, double tried) {
        Set<Long> setAside = interpretation.setAside();
        double ofNight = smoother.scattering(tried).costOfEvidence(setAside, interpretation.night());
        double ratio = tried / factor;
        return ofNight + 2 * figures * Math.log(tried) + weight * (2 * Math.log(ratio) + 1 / (ratio * ratio));
    }
}
