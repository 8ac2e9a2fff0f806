package polewright.simulation.camera;

import java.util.SplittableRandom;

/**
 * Draws a pixel's reading from its mean charge: shot noise and read noise.
 *
 * <p>Few electrons are drawn from Poisson's distribution exactly. Many are drawn from a normal distribution adjusted
 * to Poisson's skewness (first term of E. A. Cornish and R. A. Fisher, <i>Revue de l'Institut International de
 * Statistique</i> 5, 1938, 307): mean, variance and skewness agree, the rest within 1/mean.
 */
final class ChargeNoise {
    private final SplittableRandom random;
    private final double readNoise;
    private final double readVariance;

    ChargeNoise(long seed, double readNoiseElectrons) {
        this.random = new SplittableRandom(seed);
        this.readNoise = readNoiseElectrons;
        this.readVariance = readNoiseElectrons * readNoiseElectrons;
    }

    double drawn(double mean) {
        if (mean < FewElectrons.LIMIT) {
            return FewElectrons.drawn(mean, random) + readNoise * random.nextGaussian();
        }
        double z = random.nextGaussian();
        double variance = mean + readVariance;
        double bend = mean / (6 * variance);
        // The quadratic term has a variance of its own, 2 bend², which is taken off the linear term.
        return mean + Math.sqrt(variance - 2 * bend * bend) * z + bend * (z * z - 1);
    }
}
