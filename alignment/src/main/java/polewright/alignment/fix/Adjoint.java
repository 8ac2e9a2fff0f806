package polewright.alignment.fix;

import java.util.Arrays;

/**
 * The information that the rest of a night, from some moment on, adds to the state before it: the gradient λ and
 * curvature Λ of half its χ². If the night up to then gives state x and covariance P, the whole night gives x − P λ and
 * P − P Λ P.
 *
 * <p>This is the modified Bryson–Frazier smoother (G. J. Bierman, "Fixed interval smoothing with discrete
 * measurements", Int. J. Control 18 (1973) 65). It divides only by scalar variances and inverts no matrix.
 */
final class Adjoint {
    private static final int SIZE = AxisState.SIZE;
    private static final int AZIMUTH = AxisState.AZIMUTH;
    private static final int ALTITUDE = AxisState.ALTITUDE;

    private final double[] slope;
    private final double[] curvature;

    private Adjoint(double[] slope, double[] curvature) {
        this.slope = slope;
        this.curvature = curvature;
    }

    /** After the last sighting of a night: zero. */
    static Adjoint atTheEnd() {
        return new Adjoint(new double[SIZE], new double[SIZE * SIZE]);
    }

    /** Steps back across one scalar measurement: (1 − K h)ᵀ λ + h ν / s. */
    Adjoint before(Correction figure) {
        double[] turned = new double[SIZE];
        double twice = 0;
        for (int i = 0; i < SIZE; i++) {
            for (int j = 0; j < SIZE; j++) {
                turned[i] += curvature[AxisState.at(i, j)] * figure.gain().get(j);
            }
            twice += figure.gain().get(i) * turned[i];
        }
        double byCurvature = 1 / figure.variance() + twice;
        double[] slopeBefore = Arrays.copyOf(slope, SIZE);
        takeBefore(slopeBefore, figure);
        double[] curvatureBefore = Arrays.copyOf(curvature, SIZE * SIZE);
        // Only the rows and columns of azimuth and altitude change.
        addRow(curvatureBefore, AZIMUTH, figure.byAzimuth(), turned);
        addRow(curvatureBefore, ALTITUDE, figure.byAltitude(), turned);
        curvatureBefore[AxisState.at(AZIMUTH, AZIMUTH)] += figure.byAzimuth() * figure.byAzimuth() * byCurvature;
        curvatureBefore[AxisState.at(AZIMUTH, ALTITUDE)] += figure.byAzimuth() * figure.byAltitude() * byCurvature;
        curvatureBefore[AxisState.at(ALTITUDE, AZIMUTH)] += figure.byAzimuth() * figure.byAltitude() * byCurvature;
        curvatureBefore[AxisState.at(ALTITUDE, ALTITUDE)] += figure.byAltitude() * figure.byAltitude() * byCurvature;
        return new Adjoint(slopeBefore, curvatureBefore);
    }

    private static void addRow(double[] curvature, int index, double h, double[] turned) {
        for (int j = 0; j < SIZE; j++) {
            curvature[AxisState.at(index, j)] -= h * turned[j];
            curvature[AxisState.at(j, index)] -= h * turned[j];
        }
    }

    /** Steps the gradient alone back across one scalar measurement, in place. */
    static void takeBefore(double[] slope, Correction figure) {
        double gainTimesSlope = 0;
        for (int i = 0; i < SIZE; i++) {
            gainTimesSlope += figure.gain().get(i) * slope[i];
        }
        double bySlope = figure.innovation() / figure.variance() - gainTimesSlope;
        slope[AZIMUTH] += figure.byAzimuth() * bySlope;
        slope[ALTITUDE] += figure.byAltitude() * bySlope;
    }

    /** The smoothed axis for a filtered state and a gradient. */
    static LinearisationPoint moved(AxisState soFar, double[] slope) {
        double azimuth = soFar.mean(AZIMUTH);
        double altitude = soFar.mean(ALTITUDE);
        for (int k = 0; k < SIZE; k++) {
            azimuth -= soFar.covariance(AZIMUTH, k) * slope[k];
            altitude -= soFar.covariance(ALTITUDE, k) * slope[k];
        }
        return new LinearisationPoint(azimuth, altitude);
    }

    /** Steps back across a move: Fᵀ λ, Fᵀ Λ F. */
    Adjoint before(Motion motion) {
        double[] slopeBefore = Arrays.copyOf(slope, SIZE);
        motion.gains().addTransposed(slopeBefore, 0);
        double[] curvatureBefore = Arrays.copyOf(curvature, SIZE * SIZE);
        motion.gains().addTransposedBothWays(curvatureBefore);
        return new Adjoint(slopeBefore, curvatureBefore);
    }

    /** The smoothed state: {@code soFar} with the rest of the night included. */
    AxisState smoothed(AxisState soFar) {
        double[] mean = soFar.copyOfMean();
        double[] before = soFar.copyOfCovariance();
        double[] covariance = new double[SIZE * SIZE];
        double[] curved = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            Arrays.fill(curved, 0);
            int entry = 0;
            for (int k = 0; k < SIZE; k++) {
                double figure = before[AxisState.at(i, k)];
                mean[i] -= figure * slope[k];
                for (int j = 0; j < SIZE; j++) {
                    curved[j] += figure * curvature[entry];
                    entry++;
                }
            }
            for (int j = 0; j <= i; j++) {
                double narrowed = before[AxisState.at(i, j)];
                for (int k = 0; k < SIZE; k++) {
                    narrowed -= curved[k] * before[AxisState.at(j, k)];
                }
                covariance[AxisState.at(i, j)] = narrowed;
                covariance[AxisState.at(j, i)] = narrowed;
            }
        }
        return new AxisState(soFar.site(), mean, covariance, soFar.senses());
    }

    /**
     * The reduction of the night's χ² if the move just before had an additional free displacement with these variances
     * W: λᵀ (W⁻¹ + Λ)⁻¹ λ in azimuth and altitude.
     */
    double gainOfFreedom(double azimuthVariance, double altitudeVariance) {
        double a = 1 / azimuthVariance + curvature[AxisState.at(AZIMUTH, AZIMUTH)];
        double b = curvature[AxisState.at(AZIMUTH, ALTITUDE)];
        double d = 1 / altitudeVariance + curvature[AxisState.at(ALTITUDE, ALTITUDE)];
        double x = slope[AZIMUTH];
        double y = slope[ALTITUDE];
        return (d * x * x - 2 * b * x * y + a * y * y) / (a * d - b * b);
    }
}
