/** Simulated frames as FITS files, as a capture program would write them. */
@NullMarked
package polewright.simulation.fits;

import org.jspecify.annotations.NullMarked;
