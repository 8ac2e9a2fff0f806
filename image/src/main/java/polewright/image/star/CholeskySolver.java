package polewright.image.star;

import java.util.Arrays;

/**
 * Solves the small normal equations of one star. Our own code because a library's matrices would cost more than the
 * star: thousands of systems of three or six unknowns, each in a microsecond.
 */
final class CholeskySolver {
    private final int size;
    private final double[] lower;
    private final double[] work;

    CholeskySolver(int size) {
        this.size = size;
        lower = new double[size * size];
        work = new double[size];
    }

    /**
     * Factors a symmetric matrix, of which only the lower half is read, with its diagonal raised by a fraction of
     * itself.
     *
     * @return false if it is not positive definite
     */
    boolean factor(double[] matrix, double damping) {
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i * size + j] * (i == j ? 1 + damping : 1);
                for (int k = 0; k < j; k++) {
                    sum -= lower[i * size + k] * lower[j * size + k];
                }
                if (i != j) {
                    lower[i * size + j] = sum / lower[j * size + j];
                } else if (sum > 1e-12 * matrix[i * size + i]) {
                    lower[i * size + i] = Math.sqrt(sum);
                } else {
                    return false;
                }
            }
        }
        return true;
    }

    /** Solves {@code matrix · x = right}; false if the matrix is singular. */
    boolean solve(double[] matrix, double[] right, double damping, double[] x) {
        if (!factor(matrix, damping)) {
            return false;
        }
        System.arraycopy(right, 0, x, 0, size);
        backSubstitute(x);
        return true;
    }

    /** An element of the inverse of the last matrix factored. */
    double inverse(int row, int column) {
        Arrays.fill(work, 0);
        work[column] = 1;
        backSubstitute(work);
        return work[row];
    }

    /** {@code vᵀ M⁻¹ v} for the last matrix factored. */
    double quadratic(double[] v) {
        double sum = 0;
        for (int i = 0; i < size; i++) {
            double z = v[i];
            for (int k = 0; k < i; k++) {
                z -= lower[i * size + k] * work[k];
            }
            work[i] = z / lower[i * size + i];
            sum += work[i] * work[i];
        }
        return sum;
    }

    private void backSubstitute(double[] x) {
        for (int i = 0; i < size; i++) {
            double sum = x[i];
            for (int k = 0; k < i; k++) {
                sum -= lower[i * size + k] * x[k];
            }
            x[i] = sum / lower[i * size + i];
        }
        for (int i = size - 1; i >= 0; i--) {
            double sum = x[i];
            for (int k = i + 1; k < size; k++) {
                sum -= lower[k * size + i] * x[k];
            }
            x[i] = sum / lower[i * size + i];
        }
    }
}
