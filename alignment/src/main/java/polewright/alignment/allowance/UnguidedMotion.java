package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.angle.Angle;

/**
 * Image motion without corrections: tube and camera are one rigid body that turns about the axis.
 *
 * @param first apparent direction of the star at the start, ENU unit vector
 * @param last and at the end
 * @param turnRad rotation of the drive between them, westward
 */
record UnguidedMotion(Vector3D first, Vector3D last, double turnRad) implements ImageMotion {
    @Override
    public Vector2D shift(CandidateAxis axis) {
        // In the tube's frame at the start: rotated back by the drive's rotation.
        return inCamera(axis, first, axis.turned(last, turnRad));
    }

    /** From one direction to another, both in the tube's frame at the start. */
    static Vector2D inCamera(CandidateAxis axis, Vector3D from, Vector3D to) {
        Vector3D east = axis.east(from);
        Vector3D moved = to.subtract(from);
        double arcsec = new Angle(1).arcseconds();
        return new Vector2D(arcsec * moved.dotProduct(east), arcsec * moved.dotProduct(from.crossProduct(east)));
    }
}
