/**
 * How each kind of sighting is entered: its arguments, the sighting that they give, the arguments that a logged one was
 * entered with, and the sketch of what to measure.
 *
 * <p>{@link polewright.operations.sighting.SightingEntries} lists them; {@code docs/adding.md} adds one.
 */
@NullMarked
package polewright.operations.sighting;

import org.jspecify.annotations.NullMarked;
