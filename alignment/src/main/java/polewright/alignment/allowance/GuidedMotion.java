package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * Field rotation while guiding in both axes: the guide star is held still and the field turns about it.
 *
 * @param tube direction of the tube at the start, ENU unit vector; the declination axis is perpendicular to it
 * @param guideFirst apparent direction of the guide star at the start
 * @param guideLast and at the end
 * @param first apparent direction at the start of the star whose image moves
 * @param last and at the end
 */
record GuidedMotion(Vector3D tube, Vector3D guideFirst, Vector3D guideLast, Vector3D first, Vector3D last)
        implements ImageMotion {
    @Override
    public Vector2D shift(CandidateAxis axis) {
        Vector3D northernEnd = axis.northernEnd();
        Vector3D declinationAxis = axis.east(tube);
        double declinationTurn = declinationTurn(northernEnd, declinationAxis);
        Vector3D guideAtDeclination = RodriguesRotation.about(declinationAxis, guideFirst, declinationTurn);
        double axisTurn = turnBetween(northernEnd, guideAtDeclination, guideLast);
        Vector3D back = RodriguesRotation.about(
                declinationAxis, RodriguesRotation.about(northernEnd, last, -axisTurn), -declinationTurn);
        return UnguidedMotion.inCamera(axis, first, back);
    }

    /** The turn about the declination axis that brings the guide star to its final declination in the mount's frame. */
    private double declinationTurn(Vector3D northernEnd, Vector3D declinationAxis) {
        // The component along the polar axis is p cos β + q sin β, since the two axes are perpendicular.
        double p = northernEnd.dotProduct(guideFirst);
        double q = northernEnd.dotProduct(declinationAxis.crossProduct(guideFirst));
        double cosine = northernEnd.dotProduct(guideLast) / Math.hypot(p, q);
        double from = Math.atan2(q, p);
        double arc = Math.acos(Math.max(-1, Math.min(1, cosine)));
        return from >= 0 ? from - arc : from + arc;
    }

    private static double turnBetween(Vector3D about, Vector3D from, Vector3D to) {
        return Math.atan2(
                about.dotProduct(from.crossProduct(to)),
                from.dotProduct(to) - about.dotProduct(from) * about.dotProduct(to));
    }
}
