package polewright.image.star;

import org.hipparchus.special.Erf;

/** Shares of a normal distribution, by the library. */
final class ErrorFunction {
    private ErrorFunction() {}

    /** Share of a standard normal distribution between two values. */
    static double between(double low, double high) {
        return Erf.erf(low / Math.sqrt(2), high / Math.sqrt(2)) / 2;
    }
}
