/**
 * The rig: its home position, which screw to turn in which direction, and the lengths to measure on it.
 *
 * <pre>
 *   MountKind, Site, Palette ──▶ HomeDrawing (level, plumb, angles, words) ──▶ MountSketch (stand, mount, tube)
 *   ScrewToTurn ──▶ WedgeDrawing (sheet) ──▶ WedgeSketch (side, top), ScrewHead (direction)
 *   Rig ──▶ RigLengthsDrawing (one picture for each screw, one for the fork)
 * </pre>
 */
@NullMarked
package polewright.drawing.mount;

import org.jspecify.annotations.NullMarked;
