package polewright.image.star;

/**
 * The smallest standard deviation of any unbiased estimate of a star's position, from the Fisher information of its
 * pixels: for a Gaussian star integrated over each square pixel, in pixels whose variance is read noise, background and
 * star (Winick 1986, J. Opt. Soc. Am. A 3, 1809; Mendez et al. 2013, Publ. Astron. Soc. Pac. 125, 580, arXiv:1304.6361;
 * derived here: I = Σ (∂m/∂x)² / variance). Written independently of the code under test, and without its
 * approximations.
 *
 * @param skyElectrons of one pixel
 * @param readNoise of one pixel, electrons
 */
record CramerRaoBound(double skyElectrons, double readNoise) {
    /** Least sigma of x, pixels. */
    double sigmaX(double x, double y, double flux, double fwhm) {
        double sigma = DrawnSky.sigmaOf(fwhm);
        int reach = (int) Math.ceil(6 * sigma + 1);
        double information = 0;
        for (int j = (int) Math.round(y) - reach; j <= Math.round(y) + reach; j++) {
            double across = ErrorFunction.between((j - 0.5 - y) / sigma, (j + 0.5 - y) / sigma);
            for (int i = (int) Math.round(x) - reach; i <= Math.round(x) + reach; i++) {
                double low = (i - 0.5 - x) / sigma;
                double high = (i + 0.5 - x) / sigma;
                double light = flux * across * ErrorFunction.between(low, high);
                double slope = flux
                        * across
                        * (Math.exp(-low * low / 2) - Math.exp(-high * high / 2))
                        / (Math.sqrt(2 * Math.PI) * sigma);
                information += slope * slope / (skyElectrons + readNoise * readNoise + light);
            }
        }
        return 1 / Math.sqrt(information);
    }

    /** Least sigma of y. */
    double sigmaY(double x, double y, double flux, double fwhm) {
        return sigmaX(y, x, flux, fwhm);
    }

    /** Electrons of a star with a given signal to noise in the optimal circular aperture. */
    double fluxFor(double signalToNoise, double fwhm) {
        double low = 1;
        double high = 1e9;
        while (high / low > 1 + 1e-9) {
            double flux = Math.sqrt(low * high);
            if (bestSignalToNoise(flux, fwhm) > signalToNoise) {
                high = flux;
            } else {
                low = flux;
            }
        }
        return low;
    }

    private double bestSignalToNoise(double flux, double fwhm) {
        double sigma = DrawnSky.sigmaOf(fwhm);
        double best = 0;
        for (double radius = 0.3; radius < 5; radius += 0.02) {
            double light = flux * (1 - Math.exp(-radius * radius / 2));
            double noise = light + Math.PI * radius * radius * sigma * sigma * (skyElectrons + readNoise * readNoise);
            best = Math.max(best, light / Math.sqrt(noise));
        }
        return best;
    }

    /** The same for Moffat's profile, averaged over positions within the pixel, by sums over points a seventh apart. */
    double moffatSigma(double flux, double fwhm, double beta) {
        double total = 0;
        double[] phases = {-0.4, -0.2, 0, 0.2, 0.4};
        for (double phase : phases) {
            total += moffatVariance(phase, flux, fwhm, beta);
        }
        return Math.sqrt(total / phases.length);
    }

    private double moffatVariance(double x, double flux, double fwhm, double beta) {
        double alpha = fwhm / 2 / Math.sqrt(Math.pow(2, 1 / beta) - 1);
        double peak = flux * (beta - 1) / (Math.PI * alpha * alpha);
        int reach = (int) Math.ceil(5 * fwhm);
        double information = 0;
        for (int j = -reach; j <= reach; j++) {
            for (int i = -reach; i <= reach; i++) {
                double light = 0;
                double slope = 0;
                for (int v = -3; v <= 3; v++) {
                    for (int u = -3; u <= 3; u++) {
                        double dx = i + u / 7.0 - x;
                        double dy = j + v / 7.0 - 0.1;
                        double q = 1 + (dx * dx + dy * dy) / (alpha * alpha);
                        light += peak * Math.pow(q, -beta) / 49;
                        slope += peak * 2 * beta * dx / (alpha * alpha) * Math.pow(q, -beta - 1) / 49;
                    }
                }
                information += slope * slope / (skyElectrons + readNoise * readNoise + light);
            }
        }
        return 1 / information;
    }
}
