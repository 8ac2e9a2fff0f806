/**
 * The direction of a compass needle: the Earth's magnetic field and its declination.
 *
 * <pre>
 *   Site + instant ──▶ MagneticModel (WMM2025) ──▶ MagneticField: x north, y east, z down; declination east positive
 * </pre>
 */
@NullMarked
package polewright.sky.magnetic;

import org.jspecify.annotations.NullMarked;
