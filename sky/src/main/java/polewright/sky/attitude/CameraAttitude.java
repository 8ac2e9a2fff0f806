package polewright.sky.attitude;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The attitude of a camera at an instant in the ENU frame of its site: the rotation from camera axes (see the package)
 * to ENU, as a unit quaternion of the active rotation, v′ = q v q*.
 *
 * <p>Refraction has been corrected for: this is the physical attitude of the camera on the ground, not the one at which
 * it would have seen the same stars without air.
 *
 * @param at middle of the exposure
 * @param qx vector part along east
 * @param qy along north
 * @param qz up
 * @param qw scalar part
 * @param covariance of a small rotation e in camera axes, applied first: true rotation = this rotation · exp(e)
 */
public record CameraAttitude(Instant at, double qx, double qy, double qz, double qw, RotationCovariance covariance) {
    /** From a rotation that takes camera axes to ENU when applied to vectors. */
    public static CameraAttitude of(Instant at, Rotation cameraToEnu, RotationCovariance covariance) {
        // Hipparchus keeps the conjugate: its quaternion rotates frames, ours vectors.
        return new CameraAttitude(
                at, -cameraToEnu.getQ1(), -cameraToEnu.getQ2(), -cameraToEnu.getQ3(), cameraToEnu.getQ0(), covariance);
    }

    /** The rotation from camera axes to ENU, to be applied to vectors. */
    public Rotation cameraToEnu() {
        return new Rotation(qw, -qx, -qy, -qz, true);
    }

    /** ENU direction of the frame centre. */
    public Vector3D boresight() {
        return cameraToEnu().applyTo(Vector3D.PLUS_K);
    }

    /**
     * The rotation that carried the camera from {@code earlier} to this attitude, as an ENU vector: along the rotation
     * axis, with the angle in radians, 0 to π, as its length.
     */
    public Vector3D turnedSince(CameraAttitude earlier) {
        Rotation turn = cameraToEnu().applyTo(earlier.cameraToEnu().revert());
        return turn.getAxis(RotationConvention.VECTOR_OPERATOR).scalarMultiply(turn.getAngle());
    }

    /** This attitude after a rotation of the ENU frame, e.g. by a screw of the wedge. */
    public CameraAttitude turnedBy(Rotation inEnu) {
        return of(at, inEnu.applyTo(cameraToEnu()), covariance);
    }
}
