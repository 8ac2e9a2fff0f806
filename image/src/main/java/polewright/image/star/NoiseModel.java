package polewright.image.star;

import java.util.List;

/**
 * A pixel's variance as a function of a star's light m on it: {@code sky + perCount·m + perSquare·m²}. No file gives
 * it, so it is estimated from the residuals of the stars' fits.
 *
 * @param perCount variance added by a count of star light: one over the gain in electrons per count
 * @param perSquare relative variance of the residuals of the fitted shape, because stars are not perfect Gaussians
 */
record NoiseModel(double perCount, double perSquare) {
    /** The background noise alone. */
    static final NoiseModel SKY_ALONE = new NoiseModel(0, 0);

    private static final int ROUNDS = 6;
    private static final double OUTLIER = 12;
    // A fit that is off by more than a seventh of the light has not fitted a star.
    private static final double MOST_PER_SQUARE = 0.02;

    double variance(double sky, double light) {
        double m = Math.max(0, light);
        return sky + m * (perCount + m * perSquare);
    }

    /** The model that the residuals of some stars' fits follow. */
    static NoiseModel of(List<FitResidual> stars) {
        double[] ratios =
                stars.stream().mapToDouble(FitResidual::excessPerLight).sorted().toArray();
        if (ratios.length == 0) {
            return SKY_ALONE;
        }
        NoiseModel law = new NoiseModel(Math.max(0, ratios[ratios.length / 2]), 0);
        for (int round = 0; round < ROUNDS; round++) {
            law = law.improved(stars);
        }
        return law;
    }

    /** Weighted least squares of both terms, neither below zero, without far outliers. */
    private NoiseModel improved(List<FitResidual> stars) {
        double s11 = 0;
        double s12 = 0;
        double s22 = 0;
        double t1 = 0;
        double t2 = 0;
        for (FitResidual star : stars) {
            for (int i = 0; i < star.pixels(); i++) {
                double m = star.light(i);
                double expected = variance(star.skyVariance(), m);
                if (star.square(i) < OUTLIER * expected) {
                    double weight = star.share(i) / (expected * expected);
                    double excess = star.square(i) - star.skyVariance();
                    s11 += weight * m * m;
                    s12 += weight * m * m * m;
                    s22 += weight * m * m * m * m;
                    t1 += weight * excess * m;
                    t2 += weight * excess * m * m;
                }
            }
        }
        if (!(s11 > 0)) {
            return this;
        }
        double det = s11 * s22 - s12 * s12;
        boolean both = det > 1e-9 * s11 * s22;
        double a = both ? (t1 * s22 - t2 * s12) / det : t1 / s11;
        double b = both ? (t2 * s11 - t1 * s12) / det : 0;
        if (b < 0) {
            return limited(t1 / s11, 0);
        }
        return a < 0 ? limited(0, t2 / s22) : limited(a, b);
    }

    private static NoiseModel limited(double perCount, double perSquare) {
        return new NoiseModel(Math.max(0, perCount), Math.max(0, Math.min(MOST_PER_SQUARE, perSquare)));
    }
}
