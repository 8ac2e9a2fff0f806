/**
 * A frame as a picture: its stars marked, the place of the pole and the axis on it, and a caption.
 * <pre>
 *   Frame ──Stretch──▶ grey ─┐
 *   PlacedFrame, PointMark ──┴──FramePicture──▶ PNG
 *   DecodedFrame ──ScreenPicture──▶ PNG of the image alone, whole or a part at full size
 *   PlacedFrame, AxisEstimate ──LiveFrame──▶ the overlay's contents ──LiveFrameDrawing──▶ SVG to lie over it
 * </pre>
 */
@NullMarked
package polewright.operations.picture;

import org.jspecify.annotations.NullMarked;
