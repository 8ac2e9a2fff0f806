package polewright.simulation.camera;

import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** A camera's attitude as a function of time during an exposure. */
@FunctionalInterface
public interface CameraPath {
    /**
     * Sidereal rate: one turn in 86164.0905 s. Defined here because the rendered sky must not depend on the code
     * under test.
     */
    double SIDEREAL_RAD_PER_SECOND = 2 * Math.PI / 86164.0905;

    /**
     * The rotation from camera axes to ENU, to be applied to vectors.
     *
     * @param secondsFromMiddle from the middle of the exposure; negative before it
     */
    Rotation cameraToEnu(double secondsFromMiddle);

    /** On a mount at rest: the sky turns past it. */
    static CameraPath standing(Rotation cameraToEnu) {
        return secondsFromMiddle -> cameraToEnu;
    }

    /**
     * On a mount that tracks the sky about its own axis, at the sidereal rate.
     *
     * @param atMiddle the attitude at the middle of the exposure
     * @param northernEnd ENU unit vector of the axis, its end toward the north celestial pole
     */
    static CameraPath tracking(Rotation atMiddle, Vector3D northernEnd) {
        // The sky turns clockwise about its north pole as seen from outside, a negative rotation about it.
        return secondsFromMiddle -> new Rotation(
                        northernEnd, -SIDEREAL_RAD_PER_SECOND * secondsFromMiddle, RotationConvention.VECTOR_OPERATOR)
                .applyTo(atMiddle);
    }
}
