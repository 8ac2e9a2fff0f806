package polewright.image.match;

/**
 * How much likelier the frame's stars are if the plate is right than if they lie anywhere.
 *
 * <p>A detection is a star of the atlas in its place, with Gaussian errors, or with probability d something else,
 * anywhere on the frame; if the plate is wrong, all are anywhere. So each detection multiplies the odds by
 * d + (1 − d)(A / N) Σ exp(−r² / 2σ²) / 2πσ², with A the area of the frame and N the number of atlas stars on it. What
 * share d of the detections is no star is not known: the best of a few is taken.
 *
 * <p>The plate was chosen among as many as there are pairs of a pattern on the frame and one in the index, and that
 * number divides the odds. The stars that determine the plate's parameters say nothing of it and are left out.
 */
final class Odds {
    /** A match is believed from these odds on: a thousand million to one, after the search has been paid for. */
    static final double LEAST_LOG = Math.log(1e9);

    /**
     * Where the place and the scale were told. Told rightly, as they nearly always are, a match there is what was expected:
     * a million to one against chance is as sure as the other odds anywhere in the sky.
     */
    static final double LEAST_LOG_OF_FEW = Math.log(1e6);

    /** The share of strays that neither trusts nor distrusts. */
    static final double EVEN = 0.5;

    private static final double[] STRAY_SHARES = {0.05, 0.2, EVEN, 0.8, 0.95};

    private final double[] logs = new double[STRAY_SHARES.length];

    /**
     * Takes one detection.
     *
     * @param gain (A / N) times the density of its nearest star there; 0 where there is none
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

    /** (A / N) times a Gaussian's density. */
    static double gain(double areaPixels, double starsOnFrame, double offPixels2, double sigmaPixels) {
        double variance = sigmaPixels * sigmaPixels;
        return areaPixels
                / Math.max(1, starsOnFrame)
                * Math.exp(-offPixels2 / (2 * variance))
                / (2 * Math.PI * variance);
    }
}
