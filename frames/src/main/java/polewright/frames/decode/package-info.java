/** Bytes of a file become a {@link polewright.frames.Frame}: FITS, TIFF, PNG, JPEG, and the previews inside raw files. */
@NullMarked
package polewright.frames.decode;

import org.jspecify.annotations.NullMarked;
