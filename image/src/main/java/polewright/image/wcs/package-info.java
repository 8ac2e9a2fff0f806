/** A plate as other programs read it: the World Coordinate System of FITS. */
@NullMarked
package polewright.image.wcs;

import org.jspecify.annotations.NullMarked;
