package polewright.image.match;

/**
 * The likelihood ratio of a plate against stars at random positions.
 *
 * <p>A detection is an atlas star at its position with Gaussian errors, or, with probability d, something else anywhere
 * on the frame; if the plate is wrong, all are anywhere. So each detection multiplies the odds by d + (1 − d)(A / N) Σ
 * exp(−r² / 2σ²) / 2πσ², with A the area of the frame and N the number of atlas stars on it. The fraction d of
 * detections that are not stars is unknown: the best of a few values is used.
 *
 * <p>The plate was chosen among as many trials as there are pairs of a pattern on the frame and one in the index, and
 * the odds are divided by that number. The stars that determine the plate's parameters carry no information about it
 * and are left out.
 */
final class Odds {
    /** A match is accepted from these odds on: a thousand million to one, after correcting for the number of trials. */
    static final double LEAST_LOG = Math.log(1e9);

    /**
     * If position and scale were given. They are nearly always right, so a match there is what was expected: a million
     * to one against chance is as certain as the other odds anywhere in the sky.
     */
    static final double LEAST_LOG_OF_FEW = Math.log(1e6);

    /** The fraction of spurious detections that is neutral. */
    static final double EVEN = 0.5;

    private static final double[] STRAY_SHARES = {0.05, 0.2, EVEN, 0.8, 0.95};

    private final double[] logs = new double[STRAY_SHARES.length];

    /**
     * Adds one detection.
     *
     * @param gain (A / N) times the density of its nearest star there; 0 if there is none
     */
    void add(double gain) {
        for (int i = 0; i < STRAY_SHARES.length; i++) {
            logs[i] += Math.log(STRAY_SHARES[i] + (1 - STRAY_SHARES[i]) * gain);
        }
    }

    /** Natural logarithm of the odds. */
    double log() {
        double best = Double.NEGATIVE_INFINITY;
        for (double log : logs) {
            best = Math.max(best, log);
        }
        return best - Math.log(STRAY_SHARES.length);
    }

    /** (A / N) times a Gaussian density. */
    static double gain(double areaPixels, double starsOnFrame, double residualPixels2, double sigmaPixels) {
        double variance = sigmaPixels * sigmaPixels;
        return areaPixels
                / Math.max(1, starsOnFrame)
                * Math.exp(-residualPixels2 / (2 * variance))
                / (2 * Math.PI * variance);
    }
}
