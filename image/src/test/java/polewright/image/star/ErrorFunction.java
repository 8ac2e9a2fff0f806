package polewright.image.star;

import org.hipparchus.special.Erf;

/** Probabilities of a normal distribution, by the library. */
final class ErrorFunction {
    private ErrorFunction() {}

    /** Probability of a standard normal variable between two values. */
    static double between(double low, double high) {
        return Erf.erf(low / Math.sqrt(2), high / Math.sqrt(2)) / 2;
    }
}
