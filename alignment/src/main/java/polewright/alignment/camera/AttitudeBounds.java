package polewright.alignment.camera;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;

/** Validity checks for an attitude: attitudes may come from files written by other programs. */
public final class AttitudeBounds {
    private static final double UNIT_WITHIN = 1e-6;
    // A hundredth of an arcsecond to ten degrees.
    private static final double LEAST_ARCSEC2 = 1e-4;
    private static final double MOST_ARCSEC2 = 36_000.0 * 36_000;
    // Below this the correlations are only rounding errors.
    private static final double LEAST_SHARE = 1e-10;

    private AttitudeBounds() {}

    /** The same attitude, if it is usable. */
    public static CameraAttitude require(CameraAttitude attitude) {
        double length = Math.sqrt(attitude.qx() * attitude.qx()
                + attitude.qy() * attitude.qy()
                + attitude.qz() * attitude.qz()
                + attitude.qw() * attitude.qw());
        if (!(Math.abs(length - 1) <= UNIT_WITHIN)) {
            throw new InputRefused(
                    "the quaternion (x, y, z, w) has length " + PlainNumber.asTyped(length) + ", not 1",
                    "give the unit quaternion that turns camera axes to east, north, up");
        }
        RotationCovariance c = attitude.covariance();
        requireVariance("x", c.xxArcsec2());
        requireVariance("y", c.yyArcsec2());
        requireVariance("z", c.zzArcsec2());
        if (!isPositiveDefinite(c)) {
            throw new InputRefused(
                    "the covariance is not positive definite: no errors can be so correlated",
                    "give variances about x, y and z in arcsec², and leave out the covariances if in doubt");
        }
        return attitude;
    }

    private static void requireVariance(String about, double arcsec2) {
        if (!(arcsec2 >= LEAST_ARCSEC2 && arcsec2 <= MOST_ARCSEC2)) {
            throw new InputRefused(
                    "a variance about " + about + " of " + PlainNumber.asTyped(arcsec2)
                            + " arcsec² is outside 0.0001 to 1296000000",
                    "give the square of 1 sigma in arcseconds");
        }
    }

    /** By the leading minors of the correlation matrix. */
    private static boolean isPositiveDefinite(RotationCovariance c) {
        double xy = c.xyArcsec2() / Math.sqrt(c.xxArcsec2() * c.yyArcsec2());
        double xz = c.xzArcsec2() / Math.sqrt(c.xxArcsec2() * c.zzArcsec2());
        double yz = c.yzArcsec2() / Math.sqrt(c.yyArcsec2() * c.zzArcsec2());
        double two = 1 - xy * xy;
        double three = 1 - xy * xy - xz * xz - yz * yz + 2 * xy * xz * yz;
        return two > LEAST_SHARE && three > LEAST_SHARE;
    }
}
