/** Measurements of the axis, each with its exact model and its uncertainty. */
@NullMarked
package polewright.alignment.sighting;

import org.jspecify.annotations.NullMarked;
