/** Measurements that tell where the axis points, each with its exact model and its uncertainty. */
@NullMarked
package polewright.axis.sighting;

import org.jspecify.annotations.NullMarked;
