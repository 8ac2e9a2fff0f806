/**
 * The axis from frames of a camera on the tube.
 *
 * <pre>
 *   attitudes, right ascension turned between them ──▶ AxisFromFrames ──▶ FrameFinding: what looks wrong
 *                                                          │
 *   one more attitude, screws turned meanwhile ────────────┴─────────▶ ScrewProgress: the axis now
 *   attitudes of one field, tracked ─────────────────────────────────▶ TrackedSequence: drift, periodic error
 * </pre>
 *
 * <p>The camera is fixed to the tube. While only right ascension turns, the direction of the axis is constant in camera
 * axes, whatever the drive does and however far the mount is turned: with C the rotation from camera axes to ENU,
 * Cᵀ a = b in every frame. This package is built on that one equation. Every attitude is given in ENU at its own time,
 * so diurnal rotation has already been removed.
 *
 * <p>A small error e of an attitude is a rotation in camera axes, applied first: true C = measured C · exp(e).
 */
@NullMarked
package polewright.alignment.camera;

import org.jspecify.annotations.NullMarked;
