package polewright.simulation.camera;

import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** How a camera stands, and how it moves, during an exposure. */
@FunctionalInterface
public interface CameraPath {
    /** Sidereal rate: one turn in 86164.0905 s. By itself, as the sky that is drawn must not owe anything to what is tested. */
    double SIDEREAL_RAD_PER_SECOND = 2 * Math.PI / 86164.0905;

    /**
     * The turn from camera axes to ENU, to be applied to vectors.
     *
     * @param secondsFromMiddle from the middle of the exposure; negative before it
     */
    Rotation cameraToEnu(double secondsFromMiddle);

    /** On a mount that stands still: the sky turns past it. */
    static CameraPath standing(Rotation cameraToEnu) {
        return secondsFromMiddle -> cameraToEnu;
    }

    /**
     * On a mount that follows the sky about its own axis, at the sidereal rate.
     *
     * @param atMiddle how it stands at the middle of the exposure
     * @param northernEnd ENU unit vector of the axis, its end toward the north celestial pole
     */
    static CameraPath tracking(Rotation atMiddle, Vector3D northernEnd) {
        // The sky turns clockwise about its north pole as seen from outside, a negative turn about it.
        return secondsFromMiddle -> new Rotation(
                        northernEnd, -SIDEREAL_RAD_PER_SECOND * secondsFromMiddle, RotationConvention.VECTOR_OPERATOR)
                .applyTo(atMiddle);
    }
}
