package polewright.alignment.camera;

import java.util.List;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.sky.angle.Angle;

/**
 * A straight line, optionally with a sine or a parabola, through positions in arcseconds against minutes.
 *
 * @param perMinute slope, arcsec per minute
 * @param sigmaPerMinute its 1 sigma
 * @param residuals from the line alone, arcsec
 * @param residualSquare weighted sum of squares after the line and the sine or parabola
 * @param periodMinutes of the sine; 0 without
 * @param amplitude of the sine, arcsec; 0 without
 * @param amplitudeSigma its 1 sigma
 */
record DriftLine(
        double perMinute,
        double sigmaPerMinute,
        List<Double> residuals,
        double residualSquare,
        double periodMinutes,
        double amplitude,
        double amplitudeSigma) {
    private static final int ENOUGH_TO_SEE_A_RUN = 10;

    /**
     * One position.
     *
     * @param minutes since the first
     */
    record Point(double minutes, double arcsec, double sigmaArcsec) {}

    /** The additional term as a function of minutes. */
    private interface ExtraTerm {
        double[] at(double minutes);
    }

    static DriftLine of(List<Point> points) {
        return fit(points, 0, 0, minutes -> new double[0]);
    }

    /** With a sine of this period. */
    static DriftLine withSine(List<Point> points, double periodMinutes) {
        double rate = 2 * Math.PI / periodMinutes;
        return fit(
                points, periodMinutes, 2, minutes -> new double[] {Math.cos(rate * minutes), Math.sin(rate * minutes)});
    }

    /**
     * With a parabola, which describes an hour of a distant star's track and is the simpler assumption over less than
     * one turn of the worm. The slope is that at half time.
     */
    static DriftLine withBend(List<Point> points) {
        double half = points.get(points.size() - 1).minutes() / 2;
        return fit(points, 0, 1, minutes -> new double[] {Math.pow(minutes / half - 1, 2)});
    }

    TrackedSequence.Drift drift() {
        return new TrackedSequence.Drift(Angle.ofArcseconds(perMinute), Angle.ofArcseconds(sigmaPerMinute));
    }

    private static DriftLine fit(List<Point> points, double periodMinutes, int besides, ExtraTerm beside) {
        int n = points.size();
        int unknowns = 2 + besides;
        double middle = points.get(n - 1).minutes() / 2;
        RealMatrix design = MatrixUtils.createRealMatrix(n, unknowns);
        RealVector measured = MatrixUtils.createRealVector(n);
        for (int i = 0; i < n; i++) {
            Point point = points.get(i);
            double weight = 1 / point.sigmaArcsec();
            measured.setEntry(i, weight * point.arcsec());
            design.setEntry(i, 0, weight);
            design.setEntry(i, 1, weight * (point.minutes() - middle));
            double[] more = beside.at(point.minutes());
            for (int k = 0; k < besides; k++) {
                design.setEntry(i, 2 + k, weight * more[k]);
            }
        }
        WeightedFit fit = WeightedFit.ofUnitNoise(design, measured);
        RealVector x = fit.solution();
        double[] left = new double[n];
        Double[] besideLine = new Double[n];
        for (int i = 0; i < n; i++) {
            Point point = points.get(i);
            left[i] = (measured.getEntry(i) - design.getRowVector(i).dotProduct(x)) * point.sigmaArcsec();
            besideLine[i] = point.arcsec() - x.getEntry(0) - x.getEntry(1) * (point.minutes() - middle);
        }
        double variance = inflation(fit.chiSquared(), n - unknowns) * correlationInflation(left);
        boolean sine = periodMinutes > 0;
        return new DriftLine(
                x.getEntry(1),
                Math.sqrt(variance * fit.covariance().getEntry(1, 1)),
                List.of(besideLine),
                fit.chiSquared(),
                periodMinutes,
                sine ? Math.hypot(x.getEntry(2), x.getEntry(3)) : 0,
                sine
                        ? Math.sqrt(variance
                                * (fit.covariance().getEntry(2, 2)
                                        + fit.covariance().getEntry(3, 3))
                                / 2)
                        : 0);
    }

    /**
     * Frames scatter more than their stars' noise if seeing or drive are unsteady; the scatter is never taken to be
     * less.
     */
    private static double inflation(double chiSquared, int degreesOfFreedom) {
        return degreesOfFreedom > 0 ? Math.max(1, chiSquared / degreesOfFreedom) : 1;
    }

    /**
     * The factor by which the variance of a mean grows if successive residuals are correlated: (1 + r) / (1 − r) for a
     * correlation r between neighbours, if it is significant.
     */
    private static double correlationInflation(double[] left) {
        if (left.length < ENOUGH_TO_SEE_A_RUN) {
            return 1;
        }
        double products = 0;
        double squares = left[0] * left[0];
        for (int i = 1; i < left.length; i++) {
            products += left[i] * left[i - 1];
            squares += left[i] * left[i];
        }
        double correlation = squares > 0 ? products / squares : 0;
        return correlation > 2 / Math.sqrt(left.length) ? (1 + correlation) / (1 - Math.min(0.98, correlation)) : 1;
    }
}
