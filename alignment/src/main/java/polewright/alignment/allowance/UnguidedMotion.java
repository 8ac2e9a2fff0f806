package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.angle.Angle;

/**
 * Nobody corrects: tube and camera are one rigid thing that turns about the axis.
 *
 * @param first where the star is seen at the beginning, ENU unit vector
 * @param last where it is seen at the end
 * @param turnRad how far the drive turns meanwhile, westward
 */
record UnguidedMotion(Vector3D first, Vector3D last, double turnRad) implements ImageMotion {
    @Override
    public Vector2D shift(CandidateAxis axis) {
        // In the tube, as it stood at the beginning: turned back by what the drive has turned.
        return inCamera(axis, first, axis.turned(last, turnRad));
    }

    /** From one direction to another, both with the tube as it stood at the beginning. */
    static Vector2D inCamera(CandidateAxis axis, Vector3D from, Vector3D to) {
        Vector3D east = axis.east(from);
        Vector3D moved = to.subtract(from);
        double arcsec = new Angle(1).arcseconds();
        return new Vector2D(arcsec * moved.dotProduct(east), arcsec * moved.dotProduct(from.crossProduct(east)));
    }
}
