/**
 * A practice night on disk: its deeds as lines of JSON, its own log of events, and its frames.
 *
 * <pre>
 *   data folder / practice / 1 / deeds.jsonl     the scenario, then one deed a line
 *                                nights.sqlite   what the player logged
 *                                frames/         what the camera took
 * </pre>
 *
 * <p>Whoever begins another gets the next number; nothing of the earlier ones is touched.
 */
@NullMarked
package polewright.operations.practice;

import org.jspecify.annotations.NullMarked;
