/**
 * Which stars are visible against the sky by day, at dusk and at night.
 *
 * <pre>
 *   Sun's place + where one looks ──▶ SkyLuminance (cd/m²) ─┐
 *                                                          ├──▶ FaintestStar (V)
 *   eye alone, or Instrument (aperture, magnification) ─────┘
 *                        └─▶ EyeThreshold: the least light that the eye detects against that background
 * </pre>
 */
@NullMarked
package polewright.sky.daylight;

import org.jspecify.annotations.NullMarked;
