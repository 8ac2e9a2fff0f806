package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A while during which something is looked at.
 *
 * @param start where it is when the while begins, ENU unit vector without air
 * @param seconds how long the while is
 */
record Stretch(Vector3D start, double seconds) {}
