/** A plate as a FITS World Coordinate System, for other programs. */
@NullMarked
package polewright.image.wcs;

import org.jspecify.annotations.NullMarked;
