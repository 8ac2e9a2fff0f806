/**
 * Watches the folder in which a capture program saves frames while a person turns the mount and then its screws.
 * <pre>
 *   FrameWatch: look, place, report, log; in the foreground for a command, as BackgroundWatch for a page
 *   folder ──FrameFolder──▶ whole files, each once ──(placed)──▶ TurningWatch ──▶ WatchStep: the result of this frame
 *                                                                                  │
 *               WatchListener ◀──WatchEvent── (each thing that happens) ◀──────────┘
 *               LiveView: the newest frame, ready to be shown
 * </pre>
 */
@NullMarked
package polewright.operations.watch;

import org.jspecify.annotations.NullMarked;
