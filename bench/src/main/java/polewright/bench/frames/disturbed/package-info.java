/**
 * Sets of frames during which something went wrong, generated as attitudes with plain vectors and matrices written
 * here: nothing of {@code polewright.mount} is used to make them.
 */
@NullMarked
package polewright.bench.frames.disturbed;

import org.jspecify.annotations.NullMarked;
