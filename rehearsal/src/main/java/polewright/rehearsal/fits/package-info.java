/** Frames of the rehearsal as the bytes that a capture program would write. */
@NullMarked
package polewright.rehearsal.fits;

import org.jspecify.annotations.NullMarked;
