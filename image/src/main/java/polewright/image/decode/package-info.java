/**
 * Decodes the bytes of a file to a {@link polewright.image.Frame}: FITS, TIFF, PNG, JPEG, and the previews inside raw
 * files.
 */
@NullMarked
package polewright.image.decode;

import org.jspecify.annotations.NullMarked;
