/**
 * A folder in which a capture program leaves frames, watched while a person turns the mount and then its screws.
 *
 * <pre>
 *   FrameWatch: look, place, tell, log; in the foreground for a command, as BackgroundWatch for a page
 *
 *   folder ──FrameFolder──▶ whole files, each once ──(placed)──▶ TurningWatch ──▶ WatchStep: what this frame told
 *                                                                                  │
 *               WatchListener ◀──WatchEvent── (each thing that happens) ◀──────────┘
 *               LiveView: the newest frame as it is to be looked at
 * </pre>
 */
@NullMarked
package polewright.operations.watch;

import org.jspecify.annotations.NullMarked;
