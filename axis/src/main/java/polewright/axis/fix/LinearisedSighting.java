package polewright.axis.fix;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.axis.AxisPointing;
import polewright.axis.sighting.AxisModel;
import polewright.sky.angle.Angle;

/**
 * A sighting's normalised residual as a straight line about one azimuth and altitude of the axis.
 *
 * @param azimuthRad where it was linearised
 * @param altitudeRad where it was linearised
 * @param residual at that place, predicted minus measured over sigma
 * @param slopes rows of (d/dazimuth, d/daltitude), per radian
 */
record LinearisedSighting(double azimuthRad, double altitudeRad, double[] residual, double[][] slopes) {
    private static final double STEP_RAD = 1e-6;
    private static final double LEAST_VARIANCE = 1e-9;

    static LinearisedSighting of(AxisModel model, double azimuthRad, double altitudeRad) {
        double[] residual = at(model, azimuthRad, altitudeRad);
        double[] east = at(model, azimuthRad + STEP_RAD, altitudeRad);
        double[] west = at(model, azimuthRad - STEP_RAD, altitudeRad);
        double[] above = at(model, azimuthRad, altitudeRad + STEP_RAD);
        double[] below = at(model, azimuthRad, altitudeRad - STEP_RAD);
        double[][] slopes = new double[residual.length][2];
        for (int i = 0; i < residual.length; i++) {
            slopes[i][0] = (east[i] - west[i]) / (2 * STEP_RAD);
            slopes[i][1] = (above[i] - below[i]) / (2 * STEP_RAD);
        }
        return new LinearisedSighting(azimuthRad, altitudeRad, residual, slopes);
    }

    static LinearisedSighting of(AxisModel model, AxisState state) {
        return of(model, state.mean().getEntry(AxisState.AZIMUTH), state.mean().getEntry(AxisState.ALTITUDE));
    }

    /** The state after taking this sighting into account; the figures are independent and of unit variance. */
    AxisState update(AxisState state) {
        RealVector mean = state.mean().copy();
        RealMatrix covariance = state.covariance();
        for (int i = 0; i < residual.length; i++) {
            RealVector slope = slope(i);
            double predicted = residual[i]
                    + slopes[i][0] * (mean.getEntry(AxisState.AZIMUTH) - azimuthRad)
                    + slopes[i][1] * (mean.getEntry(AxisState.ALTITUDE) - altitudeRad);
            RealVector gainTimesVariance = covariance.operate(slope);
            double variance = 1 + slope.dotProduct(gainTimesVariance);
            mean = mean.subtract(gainTimesVariance.mapMultiply(predicted / variance));
            covariance = covariance.subtract(
                    gainTimesVariance.outerProduct(gainTimesVariance).scalarMultiply(1 / variance));
        }
        return new AxisState(state.site(), mean, covariance, state.senses());
    }

    /**
     * Squared innovation against a state that has <em>not</em> used this sighting: χ² with as many degrees of freedom as
     * it has figures.
     */
    double squaredInnovation(AxisState other) {
        return quadratic(spread(other), 1);
    }

    /**
     * The same, from a state that <em>has</em> used it: what leaving it out would take off the night's total χ².
     */
    double squaredInnovationWithout(AxisState including) {
        return quadratic(spread(including), -1);
    }

    private double quadratic(RealMatrix spread, int sign) {
        int n = residual.length;
        RealMatrix variance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                variance.setEntry(i, j, (i == j ? 1 : 0) + sign * spread.getEntry(i, j));
            }
            variance.setEntry(i, i, Math.max(LEAST_VARIANCE, variance.getEntry(i, i)));
        }
        RealVector r = MatrixUtils.createRealVector(residual);
        return r.dotProduct(new LUDecomposition(variance).getSolver().solve(r));
    }

    private RealMatrix spread(AxisState state) {
        int n = residual.length;
        RealMatrix rows = new Array2DRowRealMatrix(n, AxisState.SIZE);
        for (int i = 0; i < n; i++) {
            rows.setRowVector(i, slope(i));
        }
        return rows.multiply(state.covariance()).multiplyTransposed(rows);
    }

    private RealVector slope(int row) {
        RealVector slope = MatrixUtils.createRealVector(AxisState.SIZE);
        slope.setEntry(AxisState.AZIMUTH, slopes[row][0]);
        slope.setEntry(AxisState.ALTITUDE, slopes[row][1]);
        return slope;
    }

    private static double[] at(AxisModel model, double azimuthRad, double altitudeRad) {
        return model.residual(
                AxisPointing.of(new Angle(azimuthRad), new Angle(altitudeRad)).elevatedEnd());
    }
}
