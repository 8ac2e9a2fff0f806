/**
 * What a camera on the tube tells of the axis.
 *
 * <pre>
 *   attitudes, right ascension turned between them ──▶ AxisFromFrames ──▶ FrameFinding: what looks wrong
 *                                                          │
 *   one more attitude, screws turned meanwhile ────────────┴─────────▶ ScrewsSoFar: where the axis is now
 *   attitudes of one field, tracked ─────────────────────────────────▶ TrackedSequence: drift, periodic error
 * </pre>
 *
 * <p>The camera is fixed to the tube. While only right ascension turns, the direction of the axis stays put in the
 * camera's own axes, whatever the drive does and however far the mount is turned: with C the turn from camera axes to
 * ENU, Cᵀ a = b in every frame. That one equation carries this package. Every attitude is placed in ENU at its own
 * time, so that the sky's own turning is out of it before it gets here.
 *
 * <p>A small error e of an attitude is a rotation in camera axes, applied first: true C = measured C · exp(e).
 */
@NullMarked
package polewright.alignment.camera;

import org.jspecify.annotations.NullMarked;
