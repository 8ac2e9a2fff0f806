/**
 * A folder in which a capture program leaves frames, watched while a person turns the mount and then its screws.
 *
 * <pre>
 *   folder ──FrameFolder──▶ whole files, each once ──(placed)──▶ TurningWatch ──▶ WatchStep: what this frame told
 * </pre>
 */
@NullMarked
package polewright.app.watch;

import org.jspecify.annotations.NullMarked;
