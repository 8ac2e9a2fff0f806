/**
 * A practice night: someone does deeds at a wedge whose offset is hidden, in daylight, on a clock that only the deeds move.
 *
 * <pre>
 *   Scenario ──▶ PracticeState ──(Deed)──▶ PracticeState ──▶ ...
 *                     │                        │
 *                  Seen (what a look gave)     ├──▶ PracticeCamera: a frame's pixels
 *                                              └──▶ Debrief (with the night's own events): the truth, and the minutes
 * </pre>
 *
 * <p>The same scenario and deeds give the same night, to the last digit: each deed has dice of its own, so that nothing
 * depends on what was drawn before it.
 */
@NullMarked
package polewright.simulation.practice;

import org.jspecify.annotations.NullMarked;
