/**
 * Pictures of the rig, as SVG text: pure functions of a mount, a site and a palette.
 *
 * <pre>
 *   MountKind, Site, Palette ──▶ HomeDrawing (level, plumb, angles, words) ──▶ SVG text
 *                                     │
 *                                     └──▶ MountSketch (stand, mount, tube)
 * </pre>
 */
@NullMarked
package polewright.axis.drawing;

import org.jspecify.annotations.NullMarked;
