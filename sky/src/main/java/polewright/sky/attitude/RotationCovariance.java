package polewright.sky.attitude;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;

/**
 * Covariance of a small rotation vector in the camera's axes: x and y move the frame centre, z rolls it.
 *
 * @param xxArcsec2 variance about x, arcsec²; the same for the others
 */
public record RotationCovariance(
        double xxArcsec2, double xyArcsec2, double xzArcsec2, double yyArcsec2, double yzArcsec2, double zzArcsec2) {
    /** The frame centre known to {@code centre} in each coordinate and the roll to {@code roll}, uncorrelated. */
    public static RotationCovariance ofSigmas(Angle centre, Angle roll) {
        double c = centre.arcseconds() * centre.arcseconds();
        double r = roll.arcseconds() * roll.arcseconds();
        return new RotationCovariance(c, 0, 0, c, 0, r);
    }

    /** Variance of the rotation about a direction in camera axes, arcsec². */
    public double varianceAboutArcsec2(Vector3D unit) {
        return covarianceArcsec2(unit, unit);
    }

    /** Covariance of the rotations about two directions in camera axes, arcsec². */
    public double covarianceArcsec2(Vector3D first, Vector3D second) {
        return first.dotProduct(times(second));
    }

    /** All variances and covariances multiplied by a factor. */
    public RotationCovariance times(double factor) {
        return new RotationCovariance(
                factor * xxArcsec2,
                factor * xyArcsec2,
                factor * xzArcsec2,
                factor * yyArcsec2,
                factor * yzArcsec2,
                factor * zzArcsec2);
    }

    /** Uncertainty of the frame centre: root mean square of its two coordinates. */
    public Angle centreSigma() {
        return Angle.ofArcseconds(Math.sqrt((xxArcsec2 + yyArcsec2) / 2));
    }

    public Angle rollSigma() {
        return Angle.ofArcseconds(Math.sqrt(zzArcsec2));
    }

    private Vector3D times(Vector3D v) {
        return new Vector3D(
                xxArcsec2 * v.getX() + xyArcsec2 * v.getY() + xzArcsec2 * v.getZ(),
                xyArcsec2 * v.getX() + yyArcsec2 * v.getY() + yzArcsec2 * v.getZ(),
                xzArcsec2 * v.getX() + yzArcsec2 * v.getY() + zzArcsec2 * v.getZ());
    }
}
