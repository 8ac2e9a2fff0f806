package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A time interval during which one direction is observed.
 *
 * @param start direction at the start, ENU unit vector without refraction
 * @param seconds length of the interval
 */
record Stretch(Vector3D start, double seconds) {}
