/** Bytes of a file become a {@link polewright.image.Frame}: FITS, TIFF, PNG, JPEG, and the previews inside raw files. */
@NullMarked
package polewright.image.decode;

import org.jspecify.annotations.NullMarked;
