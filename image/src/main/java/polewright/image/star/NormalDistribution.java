package polewright.image.star;

/**
 * The standard normal distribution, fast: a library's error function, good to sixteen digits, costs ten times as much.
 */
final class NormalDistribution {
    private NormalDistribution() {}

    static double density(double z) {
        return z * z < 80 ? Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) : 0;
    }

    /**
     * Cumulative probability of z, to 1e-7 (Abramowitz and Stegun 1964, Handbook of Mathematical Functions, 7.1.26;
     * from memory).
     */
    static double below(double z) {
        double a = Math.abs(z) / Math.sqrt(2);
        if (a > 6) {
            return z > 0 ? 1 : 0;
        }
        double t = 1 / (1 + 0.3275911 * a);
        double poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
        double above = poly * Math.exp(-a * a) / 2;
        return z > 0 ? 1 - above : above;
    }
}
