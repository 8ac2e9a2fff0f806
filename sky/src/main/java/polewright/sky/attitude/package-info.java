/**
 * The direction and roll of a camera.
 *
 * <p>Camera axes, right-handed: x toward the right of the frame, y toward its bottom (in the direction of increasing
 * rows), z out of the front of the camera. A mirrored frame is first flipped left to right, so that its camera too is
 * right-handed.
 */
@NullMarked
package polewright.sky.attitude;

import org.jspecify.annotations.NullMarked;
