package polewright.axis.camera;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.axis.AxisPointing;
import polewright.axis.OffsetCovariance;
import polewright.sky.place.Site;

/** From shifts of the axis to its own right and up, to its offset from the pole. */
final class PointingCovariance {
    private static final double ARCSEC2_PER_ARCMIN2 = 3600;

    private PointingCovariance() {}

    /**
     * Covariance of the offset.
     *
     * @param rightAndUp covariance of shifts to the right and up, arcsec²
     */
    static OffsetCovariance ofOffset(Site site, AxisPointing axis, RealMatrix rightAndUp) {
        Tangents tangents = Tangents.rightAndUp(axis.elevatedEnd());
        Vector3D up = AxisPointing.upDirection(site);
        RealMatrix toOffset = MatrixUtils.createRealMatrix(2, 2);
        toOffset.setRow(
                0, new double[] {tangents.first().getX(), tangents.second().getX()});
        toOffset.setRow(
                1,
                new double[] {tangents.first().dotProduct(up), tangents.second().dotProduct(up)});
        RealMatrix c =
                toOffset.multiply(rightAndUp).multiplyTransposed(toOffset).scalarMultiply(1 / ARCSEC2_PER_ARCMIN2);
        return new OffsetCovariance(c.getEntry(0, 0), (c.getEntry(0, 1) + c.getEntry(1, 0)) / 2, c.getEntry(1, 1));
    }
}
