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
 * @param slopes a row of (d/dazimuth, d/daltitude) for each figure, per radian
 */
record LinearisedSighting(double azimuthRad, double altitudeRad, RealVector residual, RealMatrix slopes) {
    private static final double STEP_RAD = 1e-6;
    private static final double LEAST_VARIANCE = 1e-9;

    static LinearisedSighting of(AxisModel model, double azimuthRad, double altitudeRad) {
        RealVector residual = at(model, azimuthRad, altitudeRad);
        RealMatrix slopes = new Array2DRowRealMatrix(residual.getDimension(), 2);
        slopes.setColumnVector(
                0, slope(at(model, azimuthRad + STEP_RAD, altitudeRad), at(model, azimuthRad - STEP_RAD, altitudeRad)));
        slopes.setColumnVector(
                1, slope(at(model, azimuthRad, altitudeRad + STEP_RAD), at(model, azimuthRad, altitudeRad - STEP_RAD)));
        return new LinearisedSighting(azimuthRad, altitudeRad, residual, slopes);
    }

    static LinearisedSighting of(AxisModel model, AxisState state) {
        return of(model, state.mean().getEntry(AxisState.AZIMUTH), state.mean().getEntry(AxisState.ALTITUDE));
    }

    /** The state after taking this sighting into account; the figures are independent and of unit variance. */
    AxisState update(AxisState state) {
        RealVector mean = state.mean().copy();
        RealMatrix covariance = state.covariance();
        for (int i = 0; i < residual.getDimension(); i++) {
            RealVector slope = stateSlope(i);
            double predicted = residual.getEntry(i)
                    + slopes.getEntry(i, 0) * (mean.getEntry(AxisState.AZIMUTH) - azimuthRad)
                    + slopes.getEntry(i, 1) * (mean.getEntry(AxisState.ALTITUDE) - altitudeRad);
            RealVector gainTimesVariance = covariance.operate(slope);
            double variance = 1 + slope.dotProduct(gainTimesVariance);
            mean = mean.subtract(gainTimesVariance.mapMultiply(predicted / variance));
            covariance = covariance.subtract(
                    gainTimesVariance.outerProduct(gainTimesVariance).scalarMultiply(1 / variance));
        }
        return new AxisState(state.site(), mean, covariance, state.senses());
    }

    /** What taking this sighting into account adds to the night's χ², before {@link #update}. */
    double addedChiSquared(AxisState before) {
        RealVector shift = MatrixUtils.createRealVector(new double[] {
            before.mean().getEntry(AxisState.AZIMUTH) - azimuthRad,
            before.mean().getEntry(AxisState.ALTITUDE) - altitudeRad
        });
        return quadratic(residual.add(slopes.operate(shift)), spread(before), 1);
    }

    /** How much of what it tells is of east and west, 0 to 1; the rest is of the axis's height. */
    double eastShare(double cosLatitude) {
        double east = slopes.getColumnVector(0).getNorm() / cosLatitude;
        double up = slopes.getColumnVector(1).getNorm();
        return east * east / (east * east + up * up);
    }

    /**
     * Squared innovation against a state that has <em>not</em> used this sighting: χ² with as many degrees of freedom as
     * it has figures.
     */
    double squaredInnovation(AxisState other) {
        return quadratic(residual, spread(other), 1);
    }

    /**
     * The same, from a state that <em>has</em> used it: what leaving it out would take off the night's total χ².
     */
    double squaredInnovationWithout(AxisState including) {
        return quadratic(residual, spread(including), -1);
    }

    private static double quadratic(RealVector figures, RealMatrix spread, int sign) {
        int n = figures.getDimension();
        RealMatrix variance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                variance.setEntry(i, j, (i == j ? 1 : 0) + sign * spread.getEntry(i, j));
            }
            variance.setEntry(i, i, Math.max(LEAST_VARIANCE, variance.getEntry(i, i)));
        }
        return figures.dotProduct(new LUDecomposition(variance).getSolver().solve(figures));
    }

    private RealMatrix spread(AxisState state) {
        int n = residual.getDimension();
        RealMatrix rows = new Array2DRowRealMatrix(n, AxisState.SIZE);
        for (int i = 0; i < n; i++) {
            rows.setRowVector(i, stateSlope(i));
        }
        return rows.multiply(state.covariance()).multiplyTransposed(rows);
    }

    private RealVector stateSlope(int row) {
        RealVector slope = MatrixUtils.createRealVector(AxisState.SIZE);
        slope.setEntry(AxisState.AZIMUTH, slopes.getEntry(row, 0));
        slope.setEntry(AxisState.ALTITUDE, slopes.getEntry(row, 1));
        return slope;
    }

    private static RealVector slope(RealVector after, RealVector before) {
        return after.subtract(before).mapDivide(2 * STEP_RAD);
    }

    private static RealVector at(AxisModel model, double azimuthRad, double altitudeRad) {
        return MatrixUtils.createRealVector(model.residual(
                AxisPointing.of(new Angle(azimuthRad), new Angle(altitudeRad)).elevatedEnd()));
    }
}
