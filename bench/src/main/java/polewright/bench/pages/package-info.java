/**
 * How long a person at a page waits: the program as its launcher starts it, with a browser on the same machine.
 * <pre>
 *   Serving (a process, a night begun) ──▶ page in Chromium ──▶ PageFrames: a frame saved, until it is seen
 *                                                           └─▶ TwoDevices: a press on one, until the other shows it
 *   ServerRun (the process alone) ──▶ BreakingNetwork ──▶ SoakDevice ──▶ Soak: an hour of it
 * </pre>
 */
@NullMarked
package polewright.bench.pages;

import org.jspecify.annotations.NullMarked;
