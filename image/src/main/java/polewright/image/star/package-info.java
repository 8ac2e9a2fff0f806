/** Stars of a frame: sky and its noise, peaks, places with their uncertainties. */
@NullMarked
package polewright.image.star;

import org.jspecify.annotations.NullMarked;
