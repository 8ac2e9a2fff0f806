package polewright.image.star;

/** The residuals of one star's fit, pixel by pixel. */
final class FitResidual {
    // A pixel that determines the fit almost alone has a residual without information.
    private static final double LEAST_SHARE = 0.1;

    private final double skyVariance;
    private final double[] light;
    private final double[] square;
    private final double[] share;

    /**
     * @param skyVariance of each pixel, without the star
     * @param light of the model on each pixel
     * @param difference of each pixel from the model
     * @param leverage fraction of each pixel's own variance absorbed by the fit
     */
    FitResidual(double skyVariance, double[] light, double[] difference, double[] leverage) {
        this.skyVariance = skyVariance;
        this.light = light;
        square = new double[light.length];
        share = new double[light.length];
        for (int i = 0; i < light.length; i++) {
            share[i] = Math.max(LEAST_SHARE, 1 - leverage[i]);
            square[i] = difference[i] * difference[i] / share[i];
        }
    }

    int pixels() {
        return light.length;
    }

    double skyVariance() {
        return skyVariance;
    }

    double light(int pixel) {
        return light[pixel];
    }

    /** Squared residual, corrected for the leverage. */
    double square(int pixel) {
        return square[pixel];
    }

    double share(int pixel) {
        return share[pixel];
    }

    /** Variance above the background's per count of light: a first estimate of one over the gain. */
    double excessPerLight() {
        double excess = 0;
        double all = 0;
        for (int i = 0; i < light.length; i++) {
            excess += square[i] - skyVariance;
            all += light[i];
        }
        return all > 0 ? excess / all : 0;
    }
}
