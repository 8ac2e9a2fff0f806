package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Rotation of a direction about another (O. Rodrigues 1840). Faster than quaternions, which matters because there are
 * very many.
 */
final class RodriguesRotation {
    private RodriguesRotation() {}

    /**
     * The rotated direction.
     *
     * @param about unit vector
     * @param angleRad right-handed about it
     */
    static Vector3D about(Vector3D about, Vector3D direction, double angleRad) {
        double cos = Math.cos(angleRad);
        return new Vector3D(
                cos,
                direction,
                Math.sin(angleRad),
                about.crossProduct(direction),
                (1 - cos) * about.dotProduct(direction),
                about);
    }
}
