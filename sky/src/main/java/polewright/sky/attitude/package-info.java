/**
 * Which way a camera looks.
 *
 * <p>Camera axes, right-handed: x toward the right of the picture, y toward its bottom (the way rows are counted), z out
 * of the front of the camera. A mirrored picture is first mirrored back, left for right, so that its camera too is
 * right-handed.
 */
@NullMarked
package polewright.sky.attitude;

import org.jspecify.annotations.NullMarked;
