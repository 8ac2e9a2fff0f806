package polewright.alignment.camera;

import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A linear fit by generalised least squares: y = A x + noise, the noise with a full covariance.
 *
 * @param solution x
 * @param covariance of x
 * @param chiSquared of the residuals of y
 */
record WeightedFit(RealVector solution, RealMatrix covariance, double chiSquared) {
    // Relative; the covariances here differ by many powers of ten from one direction to the next.
    private static final double SYMMETRIC_WITHIN = 1e-9;
    private static final double LEAST_PIVOT = 0;

    /**
     * Solves for x.
     *
     * @param design A, one row per measurement
     * @param measured y
     * @param noise covariance of y, positive definite
     */
    static WeightedFit of(RealMatrix design, RealVector measured, RealMatrix noise) {
        RealMatrix root = new CholeskyDecomposition(noise, SYMMETRIC_WITHIN, LEAST_PIVOT).getL();
        RealMatrix rows = MatrixUtils.createRealMatrix(design.getRowDimension(), design.getColumnDimension());
        for (int column = 0; column < design.getColumnDimension(); column++) {
            rows.setColumnVector(column, whitened(root, design.getColumnVector(column)));
        }
        RealVector figures = whitened(root, measured);
        return ofUnitNoise(rows, figures);
    }

    /** The same with independent noise of unit variance. */
    static WeightedFit ofUnitNoise(RealMatrix design, RealVector measured) {
        RealMatrix information = design.transposeMultiply(design);
        DecompositionSolver solver = new CholeskyDecomposition(information, SYMMETRIC_WITHIN, LEAST_PIVOT).getSolver();
        RealVector solution = solver.solve(design.preMultiply(measured));
        RealVector left = measured.subtract(design.operate(solution));
        return new WeightedFit(solution, solver.getInverse(), left.dotProduct(left));
    }

    private static RealVector whitened(RealMatrix root, RealVector figures) {
        RealVector unit = figures.copy();
        MatrixUtils.solveLowerTriangularSystem(root, unit);
        return unit;
    }
}
