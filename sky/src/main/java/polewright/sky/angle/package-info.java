/** Angles as values, and their formatting. */
@NullMarked
package polewright.sky.angle;

import org.jspecify.annotations.NullMarked;
