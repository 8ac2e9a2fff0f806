package polewright.planning.seasons;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Generalised linear least squares (A. C. Aitken, Proc. R. Soc. Edinburgh 55 (1935) 42, DOI 10.1017/S0370164600014346):
 * observations with a known covariance, whitened with its Cholesky factor and then solved by QR.
 *
 * @param solution the parameters
 * @param covariance of the parameters, from the given covariance of the observations: not scaled by the residuals
 * @param residuals observed minus fitted
 * @param chiSquared of the residuals
 * @param freedom observations minus parameters
 */
record LeastSquares(RealVector solution, RealMatrix covariance, RealVector residuals, double chiSquared, int freedom) {
    /**
     * Fits the parameters.
     *
     * @param design one row per observation, one column per parameter
     * @param covariance of the observations
     */
    static LeastSquares fit(double[][] design, double[] observed, double[][] covariance) {
        RealMatrix model = new Array2DRowRealMatrix(design);
        RealVector data = MatrixUtils.createRealVector(observed);
        RealMatrix root = new CholeskyDecomposition(new Array2DRowRealMatrix(covariance)).getL();
        RealMatrix white = model.copy();
        RealVector whiteData = data.copy();
        for (int column = 0; column < model.getColumnDimension(); column++) {
            RealVector solved = model.getColumnVector(column);
            MatrixUtils.solveLowerTriangularSystem(root, solved);
            white.setColumnVector(column, solved);
        }
        MatrixUtils.solveLowerTriangularSystem(root, whiteData);
        RealVector solution = new QRDecomposition(white).getSolver().solve(whiteData);
        RealMatrix normal = white.transposeMultiply(white);
        RealMatrix inverse = new CholeskyDecomposition(normal).getSolver().getInverse();
        RealVector whiteResiduals = whiteData.subtract(white.operate(solution));
        return new LeastSquares(
                solution,
                inverse,
                data.subtract(model.operate(solution)),
                whiteResiduals.dotProduct(whiteResiduals),
                observed.length - model.getColumnDimension());
    }

    double value(int parameter) {
        return solution.getEntry(parameter);
    }

    double sigma(int parameter) {
        return Math.sqrt(covariance.getEntry(parameter, parameter));
    }
}
