/** Measurements that tell where the axis points, each with its exact model and its uncertainty. */
@NullMarked
package polewright.alignment.sighting;

import org.jspecify.annotations.NullMarked;
