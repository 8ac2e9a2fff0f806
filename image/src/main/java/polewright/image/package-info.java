/**
 * From a camera's bytes to where the camera looked.
 *
 * <pre>
 *   bytes ──decode──▶ Frame ──star──▶ StarList ──match──▶ MatchedFrame ──▶ CameraAttitude (with site and time)
 *                     (pixels,        (places,            (plate: pixel ◀──▶ ICRS,
 *                      FrameFacts)     uncertainties)      stars in pairs)
 * </pre>
 *
 * <p>Pixel coordinates: x is the column and y the row of the array as stored, the first pixel's centre at (0, 0); y
 * counts downward for JPEG, PNG, TIFF and also for FITS here, where the first row stored is row 0 (FITS draws it at the
 * bottom, and counts from 1). Nothing in this module reads a file, a clock or a network: it is handed bytes.
 */
@NullMarked
package polewright.image;

import org.jspecify.annotations.NullMarked;
