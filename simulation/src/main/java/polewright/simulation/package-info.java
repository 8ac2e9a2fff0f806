/**
 * A simulated wedge with a hidden axis, and an observer who works at it, by eye or with a camera: for practice, the
 * demo, tests and benches.
 *
 * <p>Everything is computed by exact rotations of the real sky, independently of the sightings' models, so that a
 * mistake in those shows here. Randomness comes in as an argument.
 */
@NullMarked
package polewright.simulation;

import org.jspecify.annotations.NullMarked;
