/**
 * A frame as a picture: its image, and what {@code polewright.drawing.frame} draws over it.
 *
 * <pre>
 *   DecodedFrame ──ScreenPicture──▶ PNG of the image alone, whole or a part at full size
 *   PlacedFrame, PointMark ──PlacedScene──▶ FrameScene ──▶ SVG to lie over it
 *                                               └─FramePicture, PixelCanvas──▶ PNG of both, with a caption
 * </pre>
 */
@NullMarked
package polewright.operations.picture;

import org.jspecify.annotations.NullMarked;
