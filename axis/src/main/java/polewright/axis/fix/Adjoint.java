package polewright.axis.fix;

import java.util.Arrays;

/**
 * What the rest of a night, from some moment on, has to say on the state before it: slope λ and curvature Λ of half its χ².
 * With the state x and covariance P that the night up to then gives, the whole night gives x − P λ and P − P Λ P.
 *
 * <p>That is the modified Bryson–Frazier smoother (G. J. Bierman, "Fixed interval smoothing with discrete measurements",
 * Int. J. Control 18 (1973) 65). It divides by the variances of single figures only and inverts no matrix.
 */
final class Adjoint {
    private static final int SIZE = AxisState.SIZE;
    private static final int AZIMUTH = AxisState.AZIMUTH;
    private static final int ALTITUDE = AxisState.ALTITUDE;

    private final double[] slope;
    private final double[][] curvature;

    private Adjoint(double[] slope, double[][] curvature) {
        this.slope = slope;
        this.curvature = curvature;
    }

    /** After the last sighting of a night there is no more to say. */
    static Adjoint atTheEnd() {
        return new Adjoint(new double[SIZE], new double[SIZE][SIZE]);
    }

    /** The same with a figure of a sighting before it: (1 − K h)ᵀ λ + h ν / s. */
    Adjoint before(Correction figure) {
        double[] h = new double[SIZE];
        h[AZIMUTH] = figure.byAzimuth();
        h[ALTITUDE] = figure.byAltitude();
        double[] turned = new double[SIZE];
        double twice = 0;
        for (int i = 0; i < SIZE; i++) {
            for (int j = 0; j < SIZE; j++) {
                turned[i] += curvature[i][j] * figure.gain().get(j);
            }
            twice += figure.gain().get(i) * turned[i];
        }
        double byCurvature = 1 / figure.variance() + twice;
        double[] slopeBefore = slope.clone();
        takeBefore(slopeBefore, figure);
        double[][] curvatureBefore = new double[SIZE][];
        for (int i = 0; i < SIZE; i++) {
            curvatureBefore[i] = curvature[i].clone();
            for (int j = 0; j < SIZE; j++) {
                curvatureBefore[i][j] += h[i] * h[j] * byCurvature - h[i] * turned[j] - turned[i] * h[j];
            }
        }
        return new Adjoint(slopeBefore, curvatureBefore);
    }

    /** The slope alone with a figure of a sighting before it, in place. */
    static void takeBefore(double[] slope, Correction figure) {
        double gainTimesSlope = 0;
        for (int i = 0; i < SIZE; i++) {
            gainTimesSlope += figure.gain().get(i) * slope[i];
        }
        double bySlope = figure.innovation() / figure.variance() - gainTimesSlope;
        slope[AZIMUTH] += figure.byAzimuth() * bySlope;
        slope[ALTITUDE] += figure.byAltitude() * bySlope;
    }

    /** Where the axis was, by such a slope. */
    static Spot moved(AxisState soFar, double[] slope) {
        double azimuth = soFar.mean(AZIMUTH);
        double altitude = soFar.mean(ALTITUDE);
        for (int k = 0; k < SIZE; k++) {
            azimuth -= soFar.covariance(AZIMUTH, k) * slope[k];
            altitude -= soFar.covariance(ALTITUDE, k) * slope[k];
        }
        return new Spot(azimuth, altitude);
    }

    /** The same before a move: Fᵀ λ, Fᵀ Λ F. */
    Adjoint before(Motion motion) {
        Motion.Gains gains = motion.gains();
        double[] slopeBefore = slope.clone();
        gains.addTransposed(slopeBefore);
        double[][] curvatureBefore = new double[SIZE][];
        for (int i = 0; i < SIZE; i++) {
            curvatureBefore[i] = curvature[i].clone();
            gains.addTransposed(curvatureBefore[i]);
        }
        gains.addTransposed(curvatureBefore);
        return new Adjoint(slopeBefore, curvatureBefore);
    }

    /** The state as the whole night tells. */
    AxisState smoothed(AxisState soFar) {
        double[] mean = soFar.copyOfMean();
        double[][] before = soFar.copyOfCovariance();
        double[][] covariance = new double[SIZE][SIZE];
        double[] curved = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            Arrays.fill(curved, 0);
            for (int k = 0; k < SIZE; k++) {
                double figure = before[i][k];
                mean[i] -= figure * slope[k];
                for (int j = 0; j < SIZE; j++) {
                    curved[j] += figure * curvature[k][j];
                }
            }
            for (int j = 0; j <= i; j++) {
                double narrowed = before[i][j];
                for (int k = 0; k < SIZE; k++) {
                    narrowed -= curved[k] * before[j][k];
                }
                covariance[i][j] = narrowed;
                covariance[j][i] = narrowed;
            }
        }
        return new AxisState(soFar.site(), mean, covariance, soFar.senses());
    }

    /**
     * What the night's χ² would gain if the axis might have gone somewhere else besides at the move just before: with a
     * sigma so large, λᵀ (W⁻¹ + Λ)⁻¹ λ of azimuth and altitude.
     */
    double gainOfFreedom(double azimuthVariance, double altitudeVariance) {
        double a = 1 / azimuthVariance + curvature[AZIMUTH][AZIMUTH];
        double b = curvature[AZIMUTH][ALTITUDE];
        double d = 1 / altitudeVariance + curvature[ALTITUDE][ALTITUDE];
        double x = slope[AZIMUTH];
        double y = slope[ALTITUDE];
        return (d * x * x - 2 * b * x * y + a * y * y) / (a * d - b * b);
    }
}
