package polewright.mount;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * An axis with the covariance of its direction on the sphere: to the right (increasing azimuth) and up.
 *
 * @param axis its direction
 * @param rightRightArcsec2 variance to the right, arcsec²; the same for the others
 */
public record AxisEstimate(AxisPointing axis, double rightRightArcsec2, double rightUpArcsec2, double upUpArcsec2) {
    private static final double ARCSEC = Math.PI / (180 * 3600);
    private static final double ARCSEC2_PER_ARCMIN2 = 3600;

    /**
     * An axis with the covariance of its direction.
     *
     * @param axis ENU unit vector
     * @param rightAndUp covariance to the right and up of the axis, 2×2, arcsec²
     */
    public static AxisEstimate of(Vector3D axis, RealMatrix rightAndUp) {
        return new AxisEstimate(
                new AxisPointing(axis),
                rightAndUp.getEntry(0, 0),
                (rightAndUp.getEntry(0, 1) + rightAndUp.getEntry(1, 0)) / 2,
                rightAndUp.getEntry(1, 1));
    }

    /** An axis at an offset from the pole with a given covariance. */
    public static AxisEstimate of(Site site, AxisOffset offset, OffsetCovariance known) {
        AxisPointing axis = AxisPointing.of(site, offset);
        Tangents tangents = Tangents.rightAndUp(axis.elevatedEnd());
        Vector3D pole = AxisPointing.atPole(site).elevatedEnd();
        double along = axis.elevatedEnd().dotProduct(pole);
        // A unit vector that moves sideways recedes along the pole.
        Vector3D byEast = Vector3D.PLUS_I.subtract(offset.east().radians() / along, pole);
        Vector3D byUp = AxisPointing.upDirection(site).subtract(offset.up().radians() / along, pole);
        double ee = known.eastEastArcmin2();
        double eu = known.eastUpArcmin2();
        double uu = known.upUpArcmin2();
        RealMatrix turn = MatrixUtils.createRealMatrix(new double[][] {
            {byEast.dotProduct(tangents.first()), byUp.dotProduct(tangents.first())},
            {byEast.dotProduct(tangents.second()), byUp.dotProduct(tangents.second())}
        });
        RealMatrix arcmin2 = MatrixUtils.createRealMatrix(new double[][] {{ee, eu}, {eu, uu}});
        return of(
                axis.elevatedEnd(),
                turn.multiply(arcmin2).multiply(turn.transpose()).scalarMultiply(ARCSEC2_PER_ARCMIN2));
    }

    /** Covariance of the axis's offset from the pole. */
    public OffsetCovariance offsetCovariance(Site site) {
        Tangents tangents = Tangents.rightAndUp(axis.elevatedEnd());
        Vector3D upFromPole = AxisPointing.upDirection(site);
        double eastOfRight = tangents.first().getX();
        double eastOfUp = tangents.second().getX();
        double upOfRight = tangents.first().dotProduct(upFromPole);
        double upOfUp = tangents.second().dotProduct(upFromPole);
        return new OffsetCovariance(
                product(eastOfRight, eastOfUp, eastOfRight, eastOfUp),
                product(eastOfRight, eastOfUp, upOfRight, upOfUp),
                product(upOfRight, upOfUp, upOfRight, upOfUp));
    }

    /** 1 sigma of the axis's azimuth, larger than that of its direction on the sky. */
    public Angle azimuthSigma() {
        return Angle.ofArcseconds(Math.sqrt(rightRightArcsec2) / axis.altitude().cos());
    }

    /** 1 sigma of the axis's altitude. */
    public Angle altitudeSigma() {
        return Angle.ofArcseconds(Math.sqrt(upUpArcsec2));
    }

    /** The same axis with a further uncertainty added in each direction. */
    public AxisEstimate widenedBy(Angle eachWay) {
        double variance = eachWay.arcseconds() * eachWay.arcseconds();
        return new AxisEstimate(axis, rightRightArcsec2 + variance, rightUpArcsec2, upUpArcsec2 + variance);
    }

    /**
     * Difference between a supposed axis and this one along the great circle between them, normalised to two
     * independent values of unit variance.
     *
     * @param supposed ENU unit vector
     */
    public double[] normalisedDistance(Vector3D supposed) {
        Tangents tangents = Tangents.rightAndUp(axis.elevatedEnd());
        double right = supposed.dotProduct(tangents.first());
        double up = supposed.dotProduct(tangents.second());
        double sine = Math.hypot(right, up);
        double angle = Math.atan2(sine, supposed.dotProduct(axis.elevatedEnd()));
        double arcsecPerSine = (sine < 1e-12 ? 1 : angle / sine) / ARCSEC;
        // The Cholesky factor of the covariance, solved by forward substitution.
        double rightRoot = Math.sqrt(rightRightArcsec2);
        double crossRoot = rightUpArcsec2 / rightRoot;
        double upRoot = Math.sqrt(upUpArcsec2 - crossRoot * crossRoot);
        double first = right * arcsecPerSine / rightRoot;
        return new double[] {first, (up * arcsecPerSine - crossRoot * first) / upRoot};
    }

    private double product(double firstRight, double firstUp, double secondRight, double secondUp) {
        return (firstRight * secondRight * rightRightArcsec2
                        + (firstRight * secondUp + firstUp * secondRight) * rightUpArcsec2
                        + firstUp * secondUp * upUpArcsec2)
                / ARCSEC2_PER_ARCMIN2;
    }
}
