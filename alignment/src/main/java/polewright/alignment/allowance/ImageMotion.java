package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/** How an image moves in the camera, or in the eyepiece, from one time to a later one: exact, for any axis. */
sealed interface ImageMotion permits UnguidedMotion, GuidedMotion, GoToOffset {
    /**
     * Motion on the sky against the camera.
     *
     * @return x toward the mount's own east, y toward its own north, arcseconds
     */
    Vector2D shift(CandidateAxis axis);
}
