/** Stars of a frame: sky and its noise, peaks, places with their uncertainties. */
@NullMarked
package polewright.frames.star;

import org.jspecify.annotations.NullMarked;
