/**
 * A practice night: the player acts on a wedge whose offset is hidden, in daylight, on a clock that only the actions
 * advance.
 * <pre>
 *   Scenario ──▶ PracticeState ──(PracticeAction)──▶ PracticeState ──▶ ...
 *                     │                                  │
 *             ObservedReadings (what a look gave)        ├──▶ PracticeCamera: a frame's pixels
 *                                                        └──▶ Debrief (with the night's own events): the truth, and the time
 * </pre>
 *
 * <p>The same scenario and actions give the same night, to the last digit: each action has random numbers of its own,
 * so that nothing depends on what was drawn before it.
 */
@NullMarked
package polewright.simulation.practice;

import org.jspecify.annotations.NullMarked;
