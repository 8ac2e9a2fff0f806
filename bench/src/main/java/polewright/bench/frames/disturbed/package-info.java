/**
 * Sets of frames during which something went wrong, drawn as attitudes by plain vectors and matrices written out here:
 * nothing of {@code polewright.mount} takes part in making them.
 */
@NullMarked
package polewright.bench.frames.disturbed;

import org.jspecify.annotations.NullMarked;
