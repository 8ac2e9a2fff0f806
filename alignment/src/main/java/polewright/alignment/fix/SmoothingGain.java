package polewright.alignment.fix;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * The smoother gain that carries information from after a move back to before it.
 *
 * <p>The gain of H. E. Rauch, F. Tung, C. T. Striebel, AIAA J. 3 (1965) 1445, is P Fᵀ P'⁻¹ with P' = F P Fᵀ + Q.
 * Because F is invertible, this equals F⁻¹ (1 − Q P'⁻¹). All rows but the first two are those of the identity, since
 * only azimuth and altitude are moved and have process noise.
 */
final class SmoothingGain {
    // The first two rows.
    private final double[] azimuth;
    private final double[] altitude;

    private SmoothingGain(double[] azimuth, double[] altitude) {
        this.azimuth = azimuth;
        this.altitude = altitude;
    }

    /** The gain across a move. */
    static SmoothingGain of(Motion motion, AxisState predicted) {
        int size = AxisState.SIZE;
        double[] azimuth = new double[size];
        double[] altitude = new double[size];
        azimuth[AxisState.AZIMUTH] = 1;
        altitude[AxisState.ALTITUDE] = 1;
        if (motion.azimuthVariance() > 0 || motion.altitudeVariance() > 0) {
            RealMatrix noise = new Array2DRowRealMatrix(size, 2);
            noise.setEntry(AxisState.AZIMUTH, 0, motion.azimuthVariance());
            noise.setEntry(AxisState.ALTITUDE, 1, motion.altitudeVariance());
            RealMatrix byChance = new CholeskyDecomposition(predicted.covariance(), 1e-9, 0)
                    .getSolver()
                    .solve(noise);
            for (int j = 0; j < size; j++) {
                azimuth[j] -= byChance.getEntry(j, 0);
                altitude[j] -= byChance.getEntry(j, 1);
            }
        }
        Motion.Gains gains = motion.gains();
        azimuth[AxisState.AZIMUTH_GAIN] -= gains.azimuthOfAzimuth();
        azimuth[AxisState.ALTITUDE_INTO_AZIMUTH] -= gains.azimuthOfAltitude();
        altitude[AxisState.ALTITUDE_GAIN] -= gains.altitudeOfAltitude();
        altitude[AxisState.AZIMUTH_INTO_ALTITUDE] -= gains.altitudeOfAzimuth();
        return new SmoothingGain(azimuth, altitude);
    }

    /** Covariance of the state before the move with the state after it. */
    RealMatrix crossCovariance(AxisState after) {
        double[][] covariance = after.covariance().getData();
        return new Array2DRowRealMatrix(times(covariance));
    }

    private double[][] times(double[][] matrix) {
        int size = AxisState.SIZE;
        double[][] product = matrix.clone();
        double[] first = new double[size];
        double[] second = new double[size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                first[j] += azimuth[i] * matrix[i][j];
                second[j] += altitude[i] * matrix[i][j];
            }
        }
        product[AxisState.AZIMUTH] = first;
        product[AxisState.ALTITUDE] = second;
        return product;
    }
}
