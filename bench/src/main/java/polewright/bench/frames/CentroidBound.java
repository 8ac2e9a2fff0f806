package polewright.bench.frames;

import org.hipparchus.special.Erf;
import polewright.simulation.camera.TrueStar;

/**
 * The Cramér–Rao bound on the position of a Gaussian star, from the Fisher information of its pixels (K. A. Winick,
 * <i>J. Opt. Soc. Am. A</i> 3, 1986, 1809; derived here: I = Σ (∂m/∂x)² / variance). Light is summed
 * over each pixel's square; a pixel's variance is that of the empty sky and of the star's own light on it.
 *
 * @param xPixels smallest sigma of the column
 * @param yPixels smallest sigma of the row
 * @param signalToNoise of the star with optimally weighted pixels: √Σ m² / variance
 */
record CentroidBound(double xPixels, double yPixels, double signalToNoise) {
    private static final double REACH_SIGMAS = 6;

    static CentroidBound of(TrueStar star, Pixels pixels) {
        double sigma = pixels.sigmaPixels();
        int reach = (int) Math.ceil(REACH_SIGMAS * sigma) + 1;
        int size = 2 * reach + 1;
        int left = (int) Math.round(star.x()) - reach;
        int top = (int) Math.round(star.y()) - reach;
        double[] columns = new double[size];
        double[] columnSlopes = new double[size];
        double[] rows = new double[size];
        double[] rowSlopes = new double[size];
        for (int i = 0; i < size; i++) {
            columns[i] = share((left + i - star.x()) / sigma, sigma);
            columnSlopes[i] = slope((left + i - star.x()) / sigma, sigma);
            rows[i] = share((top + i - star.y()) / sigma, sigma);
            rowSlopes[i] = slope((top + i - star.y()) / sigma, sigma);
        }
        double ofX = 0;
        double ofY = 0;
        double ofLight = 0;
        for (int j = 0; j < size; j++) {
            for (int i = 0; i < size; i++) {
                double light = star.electrons() * columns[i] * rows[j];
                double variance = pixels.variance() + light;
                double byX = star.electrons() * columnSlopes[i] * rows[j];
                double byY = star.electrons() * columns[i] * rowSlopes[j];
                ofX += byX * byX / variance;
                ofY += byY * byY / variance;
                ofLight += light * light / variance;
            }
        }
        return new CentroidBound(1 / Math.sqrt(ofX), 1 / Math.sqrt(ofY), Math.sqrt(ofLight));
    }

    /** Share of a Gaussian's light on a pixel whose centre is this many sigmas away. */
    private static double share(double sigmas, double sigma) {
        double half = 0.5 / sigma;
        return below(sigmas + half) - below(sigmas - half);
    }

    /** Derivative of that share with respect to the star's position in pixels. */
    private static double slope(double sigmas, double sigma) {
        double half = 0.5 / sigma;
        return (density(sigmas - half) - density(sigmas + half)) / sigma;
    }

    private static double below(double sigmas) {
        return Erf.erfc(-sigmas / Math.sqrt(2)) / 2;
    }

    private static double density(double sigmas) {
        return Math.exp(-sigmas * sigmas / 2) / Math.sqrt(2 * Math.PI);
    }
}
