package polewright.frames.star;

/**
 * Tells a star from a detector's own points of light: hot pixels, alone or in pairs, and the tracks of cosmic rays. A
 * star has passed the same optics as all others; these have passed none and are sharper.
 */
final class Impostor {
    private static final int REACH = 2;
    // How much better, in chi square, the light must be told by one pixel, or by two, to be theirs: a star a little
    // sharper than the usual one must not fall to them, and two free pixels follow noise better than a star can.
    private static final double SINGLE_MARGIN = 4;
    private static final double PAIR_MARGIN = 9;
    // A star may be this much narrower than the usual one: the middle of a field is sharper than its corners.
    private static final double SHARPEST = 0.6;
    private static final double LONGEST = 2.5;
    private static final double CLEAR_SIGNAL = 10;

    private final StarShape usual;

    Impostor(StarShape usual) {
        this.usual = usual;
    }

    /** Whether one bright pixel, or two that touch, tell a cutout's light at least as well as a star does. */
    boolean isHot(Cutout cutout, Peak peak, Fit star, NoiseLaw law) {
        int n = 2 * REACH + 1;
        double[] light = new double[n * n];
        double asStar = 0;
        double total = 0;
        double[] weighed = new double[n * n];
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                int x = peak.x() - REACH + i;
                int y = peak.y() - REACH + j;
                if (cutout.contains(x, y) && cutout.counts(x - cutout.left(), y - cutout.top())) {
                    int k = j * n + i;
                    light[k] = cutout.light(x - cutout.left(), y - cutout.top());
                    double model = star.lightAt(x, y);
                    double variance = law.variance(cutout.skyVariance(), Math.max(model, light[k]));
                    weighed[k] = light[k] > 0 ? light[k] * light[k] / variance : 0;
                    total += light[k] * light[k] / variance;
                    asStar += (light[k] - model) * (light[k] - model) / variance;
                }
            }
        }
        double one = 0;
        double two = 0;
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                double here = weighed[j * n + i];
                one = Math.max(one, here);
                double right = i + 1 < n ? weighed[j * n + i + 1] : 0;
                double below = j + 1 < n ? weighed[j * n + n + i] : 0;
                two = Math.max(two, here + Math.max(right, below));
                if (j + 1 < n) {
                    double across = i + 1 < n ? weighed[j * n + n + i + 1] : 0;
                    double back = i > 0 ? weighed[j * n + n + i - 1] : 0;
                    two = Math.max(two, here + Math.max(across, back));
                }
            }
        }
        return total - one + SINGLE_MARGIN < asStar || total - two + PAIR_MARGIN < asStar;
    }

    /** Whether a well-seen shape is too narrow for these optics, or too long. */
    boolean isMisshapen(Fit free) {
        double minor = Math.sqrt(free.shape().minorVariance());
        double major = Math.sqrt(free.shape().majorVariance());
        double doubt = minor / free.signalToNoise() * 2;
        return minor + doubt < SHARPEST * Math.sqrt(usual.minorVariance())
                || (free.signalToNoise() > CLEAR_SIGNAL && major > LONGEST * Math.sqrt(usual.majorVariance()));
    }
}
