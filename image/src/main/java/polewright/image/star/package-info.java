/** Finds and measures the stars of a frame: background and noise, peaks, positions with their uncertainties. */
@NullMarked
package polewright.image.star;

import org.jspecify.annotations.NullMarked;
