/** Frames of the rehearsal as the bytes that a capture program would write. */
@NullMarked
package polewright.simulation.fits;

import org.jspecify.annotations.NullMarked;
