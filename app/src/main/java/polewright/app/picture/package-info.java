/**
 * A frame as a picture to look at: its stars marked, where the pole and the axis fall on it, words beneath.
 *
 * <pre>
 *   Frame ──Stretch──▶ grey ─┐
 *   PlacedFrame, PointMark ──┴──FramePicture──▶ PNG
 * </pre>
 */
@NullMarked
package polewright.app.picture;

import org.jspecify.annotations.NullMarked;
