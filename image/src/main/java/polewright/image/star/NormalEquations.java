package polewright.image.star;

import java.util.Arrays;

/** Normal equations of a fit of three or six parameters, and what solves them. */
final class NormalEquations {
    private final int size;
    private final double[] matrix;
    private final double[] gradient;
    private final double[] slopes;
    private final CholeskySolver solver;

    NormalEquations(int size) {
        this.size = size;
        matrix = new double[size * size];
        gradient = new double[size];
        slopes = new double[size];
        solver = new CholeskySolver(size);
    }

    /** How the light on a pixel changes with each parameter. */
    @FunctionalInterface
    interface PixelSlopes {
        void fill(int pixel, double[] slopes);
    }

    /**
     * Fills the equations.
     *
     * @param pixels how many
     * @return chi square of the model
     */
    double fill(int pixels, PixelSlopes of, double[] light, double[] model, double[] weight) {
        return size == 3 ? fillThree(pixels, of, light, model, weight) : fillAny(pixels, of, light, model, weight);
    }

    private double fillAny(int pixels, PixelSlopes of, double[] light, double[] model, double[] weight) {
        Arrays.fill(matrix, 0);
        Arrays.fill(gradient, 0);
        double chiSquare = 0;
        for (int k = 0; k < pixels; k++) {
            of.fill(k, slopes);
            double left = light[k] - model[k];
            chiSquare += left * left * weight[k];
            for (int p = 0; p < size; p++) {
                double weighed = weight[k] * slopes[p];
                gradient[p] += weighed * left;
                for (int q = 0; q <= p; q++) {
                    matrix[p * size + q] += weighed * slopes[q];
                }
            }
        }
        return chiSquare;
    }

    /** The same for most stars, whose shape is known; sums that stay in registers take a third of the time. */
    private double fillThree(int pixels, PixelSlopes of, double[] light, double[] model, double[] weight) {
        double chiSquare = 0;
        double g0 = 0;
        double g1 = 0;
        double g2 = 0;
        double m00 = 0;
        double m10 = 0;
        double m11 = 0;
        double m20 = 0;
        double m21 = 0;
        double m22 = 0;
        for (int k = 0; k < pixels; k++) {
            of.fill(k, slopes);
            double left = light[k] - model[k];
            double w = weight[k];
            double w0 = w * slopes[0];
            double w1 = w * slopes[1];
            double w2 = w * slopes[2];
            chiSquare += left * left * w;
            g0 += w0 * left;
            g1 += w1 * left;
            g2 += w2 * left;
            m00 += w0 * slopes[0];
            m10 += w1 * slopes[0];
            m11 += w1 * slopes[1];
            m20 += w2 * slopes[0];
            m21 += w2 * slopes[1];
            m22 += w2 * slopes[2];
        }
        gradient[0] = g0;
        gradient[1] = g1;
        gradient[2] = g2;
        matrix[0] = m00;
        matrix[3] = m10;
        matrix[4] = m11;
        matrix[6] = m20;
        matrix[7] = m21;
        matrix[8] = m22;
        return chiSquare;
    }

    /** The change of the parameters that the equations ask for, damped; false where they have no answer. */
    boolean solve(double damping, double[] change) {
        return solver.solve(matrix, gradient, damping, change);
    }

    /** Readies {@link #variance} and {@link #leverage}; false where the equations have no answer. */
    boolean invert() {
        return solver.factor(matrix, 0);
    }

    /** Variance of a parameter, after {@link #invert}. */
    double variance(int parameter) {
        return solver.inverse(parameter, parameter);
    }

    /** Variance that the fit's own freedom gives the light on a pixel, after {@link #invert}. */
    double leverage(int pixel, PixelSlopes of) {
        of.fill(pixel, slopes);
        return solver.quadratic(slopes);
    }

    /** What the pixels tell of a parameter, all others known: one over its least variance. */
    double information(int parameter) {
        return matrix[parameter * (size + 1)];
    }
}
