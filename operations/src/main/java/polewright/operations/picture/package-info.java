/**
 * A frame as a picture to look at: its stars marked, where the pole and the axis fall on it, words beneath.
 *
 * <pre>
 *   Frame ──Stretch──▶ grey ─┐
 *   PlacedFrame, PointMark ──┴──FramePicture──▶ PNG
 *
 *   DecodedFrame ──ScreenPicture──▶ PNG of its light alone, whole or a part at full size
 *   PlacedFrame, AxisEstimate ──LiveFrame──▶ what is to be seen on it ──LiveFrameDrawing──▶ SVG to lie over it
 * </pre>
 */
@NullMarked
package polewright.operations.picture;

import org.jspecify.annotations.NullMarked;
