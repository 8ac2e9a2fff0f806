package polewright.image.star;

import java.util.Arrays;

/** Normal equations of a fit of three or six parameters, and their solution. */
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

    /** Derivatives of the light on a pixel with respect to each parameter. */
    @FunctionalInterface
    interface PixelSlopes {
        void fill(int pixel, double[] slopes);
    }

    /**
     * Fills the equations.
     *
     * @param pixels their number
     * @return chi square of the model
     */
    double fill(int pixels, PixelSlopes of, double[] light, double[] model, double[] weight) {
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

    /** Sets an element of the lower half of the matrix. */
    void put(int row, int column, double value) {
        matrix[row * size + column] = value;
    }

    /** Sets an element of the gradient. */
    void putGradient(int parameter, double value) {
        gradient[parameter] = value;
    }

    /** The damped step of the parameters; false if the equations are singular. */
    boolean solve(double damping, double[] change) {
        return solver.solve(matrix, gradient, damping, change);
    }

    /** Prepares {@link #variance} and {@link #leverage}; false if the equations are singular. */
    boolean invert() {
        return solver.factor(matrix, 0);
    }

    /** Variance of a parameter, after {@link #invert}. */
    double variance(int parameter) {
        return solver.inverse(parameter, parameter);
    }

    /** Variance of the fitted light on a pixel, after {@link #invert}. */
    double leverage(int pixel, PixelSlopes of) {
        of.fill(pixel, slopes);
        return solver.quadratic(slopes);
    }

    /** Fisher information of the pixels on a parameter if all others are known: one over its least variance. */
    double information(int parameter) {
        return matrix[parameter * (size + 1)];
    }
}
