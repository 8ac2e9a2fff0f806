/**
 * A frame's stars, the pole and the axis, over its image.
 *
 * <pre>
 *   FrameScene ──CloseUp──▶ FrameScene ──FrameDrawing──▶ SVG over the image of a page
 *   FrameScene ──FrameDrawing, FrameCaption──▶ a Canvas of pixels, for a file
 * </pre>
 */
@NullMarked
package polewright.drawing.frame;

import org.jspecify.annotations.NullMarked;
