package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/** The motion of an image on the sensor or in the eyepiece between two times: exact, for any axis. */
sealed interface ImageMotion permits UnguidedMotion, GuidedMotion, GoToOffset {
    /**
     * Motion on the sky relative to the camera.
     *
     * @return x toward the mount's own east, y toward its own north, arcseconds
     */
    Vector2D shift(CandidateAxis axis);
}
