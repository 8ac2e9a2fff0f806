package polewright.mount;

import polewright.sky.angle.Angle;

/**
 * Covariance of an axis offset.
 *
 * @param eastEastArcmin2 variance of east, arcmin²
 * @param eastUpArcmin2 covariance, arcmin²
 * @param upUpArcmin2 variance of up, arcmin²
 */
public record OffsetCovariance(double eastEastArcmin2, double eastUpArcmin2, double upUpArcmin2) {
    public Angle sigmaEast() {
        return Angle.ofArcminutes(Math.sqrt(eastEastArcmin2));
    }

    public Angle sigmaUp() {
        return Angle.ofArcminutes(Math.sqrt(upUpArcmin2));
    }

    /** Standard deviation along the least certain direction. */
    public Angle largestSigma() {
        return Angle.ofArcminutes(Math.sqrt(mean() + halfSpread()));
    }

    /** Standard deviation along the most certain direction. */
    public Angle smallestSigma() {
        return Angle.ofArcminutes(Math.sqrt(Math.max(0, mean() - halfSpread())));
    }

    /**
     * Squared Mahalanobis distance of {@code error}; chi-squared with 2 degrees of freedom if the covariance is
     * correct.
     */
    public double normalisedSquare(AxisOffset error) {
        double e = error.east().arcminutes();
        double u = error.up().arcminutes();
        double determinant = eastEastArcmin2 * upUpArcmin2 - eastUpArcmin2 * eastUpArcmin2;
        return (upUpArcmin2 * e * e - 2 * eastUpArcmin2 * e * u + eastEastArcmin2 * u * u) / determinant;
    }

    public OffsetCovariance plus(OffsetCovariance other) {
        return new OffsetCovariance(
                eastEastArcmin2 + other.eastEastArcmin2,
                eastUpArcmin2 + other.eastUpArcmin2,
                upUpArcmin2 + other.upUpArcmin2);
    }

    private double mean() {
        return (eastEastArcmin2 + upUpArcmin2) / 2;
    }

    private double halfSpread() {
        return Math.hypot((eastEastArcmin2 - upUpArcmin2) / 2, eastUpArcmin2);
    }
}
