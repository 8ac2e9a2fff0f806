/**
 * A practice night on disk: its actions as lines of JSON, its own log of events, and its frames.
 * <pre>
 *   data folder / practice / 1 / deeds.jsonl     the scenario, then one action per line
 *                                nights.sqlite   what the player logged
 *                                frames/         the camera's frames
 * </pre>
 *
 * <p>Each new practice gets the next number; earlier ones are not touched.
 */
@NullMarked
package polewright.operations.practice;

import org.jspecify.annotations.NullMarked;
