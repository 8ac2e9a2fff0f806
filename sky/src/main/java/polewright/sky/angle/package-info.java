/** Angles as values, and how they are written. */
@NullMarked
package polewright.sky.angle;

import org.jspecify.annotations.NullMarked;
