package polewright.alignment.camera;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.sighting.SkySetting;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/**
 * A camera on a mount with a known axis, by rotations written out here, independent of the code under test.
 *
 * @param inCamera the elevated end of the axis in camera axes
 */
public record TurnedCamera(Site site, AxisPointing axis, Vector3D inCamera, Instant start) {
    /** One turn of the sky in 86164.0905 s. */
    public static final double SKY_RAD_PER_SECOND = 2 * Math.PI / 86164.0905;

    /** With this distance of the boresight from the axis, and this rotation of the picture about it. */
    public static TurnedCamera of(Site site, AxisPointing axis, double polarDistanceDeg, double rollDeg) {
        double p = Math.toRadians(polarDistanceDeg);
        double roll = Math.toRadians(rollDeg);
        return new TurnedCamera(
                site,
                axis,
                new Vector3D(Math.sin(p) * Math.cos(roll), Math.sin(p) * Math.sin(roll), Math.cos(p)),
                SkySetting.EVENING);
    }

    /** Without error: the mount turned westward by this much, with the boresight on the upper meridian at 0. */
    public CameraAttitude frame(double westDeg, double seconds, RotationCovariance covariance) {
        return CameraAttitude.of(
                start.plus(Duration.ofMillis(Math.round(seconds * 1000))), rotation(westDeg), covariance);
    }

    public Rotation rotation(double westDeg) {
        Vector3D a = axis.elevatedEnd();
        // The boresight above the axis: the axis below the boresight in its own meridian.
        Vector3D right = a.crossProduct(Vector3D.PLUS_K).normalize();
        Vector3D above = right.crossProduct(a);
        double p = Vector3D.angle(inCamera, Vector3D.PLUS_K);
        Vector3D boresight = new Vector3D(Math.cos(p), a, Math.sin(p), above);
        // Two pairs of vectors: axis to axis, boresight to boresight.
        Vector3D second = p < 1e-9 ? above : boresight;
        Vector3D secondInCamera = p < 1e-9 ? Vector3D.PLUS_I : Vector3D.PLUS_K;
        Rotation onMeridian = new Rotation(inCamera, secondInCamera, a, second);
        // Westward is clockwise about the northern end.
        Rotation turn =
                new Rotation(axis.northernEnd(site), -Math.toRadians(westDeg), RotationConvention.VECTOR_OPERATOR);
        return turn.applyTo(onMeridian);
    }

    /** A small rotation in camera axes, arcsec, applied before a frame's own rotation. */
    public static CameraAttitude disturbed(CameraAttitude frame, double xArcsec, double yArcsec, double zArcsec) {
        Vector3D e = new Vector3D(xArcsec, yArcsec, zArcsec).scalarMultiply(Math.PI / (180 * 3600));
        if (e.getNorm() == 0) {
            return frame;
        }
        Rotation first = new Rotation(e.normalize(), e.getNorm(), RotationConvention.VECTOR_OPERATOR);
        return CameraAttitude.of(frame.at(), frame.cameraToEnu().applyTo(first), frame.covariance());
    }

    /** With an error drawn from the frame's own covariance, which is diagonal. */
    public static CameraAttitude noisy(CameraAttitude frame, Random random) {
        RotationCovariance c = frame.covariance();
        return disturbed(
                frame,
                Math.sqrt(c.xxArcsec2()) * random.nextGaussian(),
                Math.sqrt(c.yyArcsec2()) * random.nextGaussian(),
                Math.sqrt(c.zzArcsec2()) * random.nextGaussian());
    }

    public static RotationCovariance sigmas(double centreArcsec, double rollArcsec) {
        return RotationCovariance.ofSigmas(Angle.ofArcseconds(centreArcsec), Angle.ofArcseconds(rollArcsec));
    }
}
