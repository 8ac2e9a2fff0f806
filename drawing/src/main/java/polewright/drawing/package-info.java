/**
 * Pictures of the rig and of the zone, as SVG text: pure functions of a mount, a site, a scene and a palette.
 *
 * <pre>
 *   MountKind, Site, Palette ──▶ HomeDrawing (level, plumb, angles, words) ──▶ SVG text
 *                                     │
 *                                     └──▶ MountSketch (stand, mount, tube)
 *
 *   Allowance ──▶ ZoneRim (stretches of the edge, each with its cause)
 *                      │
 *   ZoneScene ──▶ ZoneDrawing (sheet) ──▶ ZonePanel (one map) ──▶ MapView, LabelPlacer, Rulers, ZoneMarks
 *
 *   ScrewToTurn ──▶ WedgeDrawing (sheet) ──▶ WedgeSketch (side, top), ScrewHead (direction)
 * </pre>
 */
@NullMarked
package polewright.drawing;

import org.jspecify.annotations.NullMarked;
