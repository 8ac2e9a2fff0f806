package polewright.image.star;

import java.util.Arrays;
import java.util.SplittableRandom;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/**
 * A sky drawn in electrons, then exposed with photon noise, read noise and integer counts. Seeded, so that each test
 * sees the same stars and the same noise every time.
 */
final class DrawnSky {
    private final int width;
    private final int height;
    private final double[] electrons;

    DrawnSky(int width, int height, double skyElectrons) {
        this.width = width;
        this.height = height;
        electrons = new double[width * height];
        Arrays.fill(electrons, skyElectrons);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    DrawnSky add(int x, int y, double more) {
        if (x >= 0 && y >= 0 && x < width && y < height) {
            electrons[y * width + x] += more;
        }
        return this;
    }

    /** Multiplies each pixel's light by a function of its position: vignetting. */
    DrawnSky shade(PlaceFunction through) {
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                electrons[y * width + x] *= through.at(x, y);
            }
        }
        return this;
    }

    /** Adds a function of position: glow. */
    DrawnSky glow(PlaceFunction light) {
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                electrons[y * width + x] += light.at(x, y);
            }
        }
        return this;
    }

    /** A Gaussian star, its light summed over each pixel's square. */
    DrawnSky star(double x, double y, double flux, double fwhm) {
        double sigma = sigmaOf(fwhm);
        int reach = (int) Math.ceil(6 * sigma + 1);
        int cx = (int) Math.round(x);
        int cy = (int) Math.round(y);
        double[] across = shares(x, cx, reach, sigma);
        double[] down = shares(y, cy, reach, sigma);
        for (int j = -reach; j <= reach; j++) {
            for (int i = -reach; i <= reach; i++) {
                add(cx + i, cy + j, flux * across[i + reach] * down[j + reach]);
            }
        }
        return this;
    }

    /** Fractions of a star's light in the columns, or rows, around its centre. */
    private static double[] shares(double centre, int middle, int reach, double sigma) {
        double[] shares = new double[2 * reach + 1];
        for (int i = -reach; i <= reach; i++) {
            shares[i + reach] =
                    ErrorFunction.between((middle + i - 0.5 - centre) / sigma, (middle + i + 0.5 - centre) / sigma);
        }
        return shares;
    }

    /** A star with Moffat's profile (Moffat 1969, Astron. Astrophys. 3, 455), each pixel summed from 7 by 7 points. */
    DrawnSky moffat(double x, double y, double flux, double fwhm, double beta) {
        double alpha = fwhm / 2 / Math.sqrt(Math.pow(2, 1 / beta) - 1);
        double peak = flux * (beta - 1) / (Math.PI * alpha * alpha);
        int reach = (int) Math.ceil(12 * fwhm);
        int cx = (int) Math.round(x);
        int cy = (int) Math.round(y);
        for (int j = cy - reach; j <= cy + reach; j++) {
            for (int i = cx - reach; i <= cx + reach; i++) {
                double sum = 0;
                for (int v = -3; v <= 3; v++) {
                    for (int u = -3; u <= 3; u++) {
                        double dx = i + u / 7.0 - x;
                        double dy = j + v / 7.0 - y;
                        sum += Math.pow(1 + (dx * dx + dy * dy) / (alpha * alpha), -beta);
                    }
                }
                add(i, j, peak * sum / 49);
            }
        }
        return this;
    }

    /** A star that moved uniformly from one position to another during the exposure. */
    DrawnSky trail(double x0, double y0, double x1, double y1, double flux, double fwhm) {
        int steps = Math.max(1, (int) Math.ceil(4 * Math.hypot(x1 - x0, y1 - y0)));
        for (int k = 0; k < steps; k++) {
            double t = (k + 0.5) / steps;
            star(x0 + t * (x1 - x0), y0 + t * (y1 - y0), flux / steps, fwhm);
        }
        return this;
    }

    /** Counts of one exposure; saturated at {@code saturation} counts. */
    Frame expose(long seed, double readNoise, double electronsPerCount, double offset, double saturation) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] counts = new float[electrons.length];
        for (int i = 0; i < counts.length; i++) {
            double e = poisson(electrons[i], random) + readNoise * random.nextGaussian();
            double count = Math.rint(offset + e / electronsPerCount);
            counts[i] = (float) Math.max(0, Math.min(saturation, count));
        }
        return new Frame(width, height, counts, (float) saturation, FrameFacts.NONE);
    }

    /** The same without noise or rounding. */
    Frame exact() {
        float[] counts = new float[electrons.length];
        for (int i = 0; i < counts.length; i++) {
            counts[i] = (float) electrons[i];
        }
        return new Frame(width, height, counts, Float.POSITIVE_INFINITY, FrameFacts.NONE);
    }

    static double sigmaOf(double fwhm) {
        return fwhm / (2 * Math.sqrt(2 * Math.log(2)));
    }

    private static double poisson(double mean, SplittableRandom random) {
        if (mean > 50) {
            return Math.max(0, Math.rint(mean + Math.sqrt(mean) * random.nextGaussian()));
        }
        double limit = Math.exp(-mean);
        double product = random.nextDouble();
        int n = 0;
        while (product > limit) {
            product *= random.nextDouble();
            n++;
        }
        return n;
    }

    /** A number for each position of the frame. */
    @FunctionalInterface
    interface PlaceFunction {
        double at(int x, int y);
    }
}
