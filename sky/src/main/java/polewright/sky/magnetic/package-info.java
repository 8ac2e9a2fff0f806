/** Magnetic declination from the World Magnetic Model 2025. */
@NullMarked
package polewright.sky.magnetic;

import org.jspecify.annotations.NullMarked;
