package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.sky.place.Site;

/**
 * A possible polar axis.
 *
 * @param offset from the true pole
 * @param northernEnd ENU unit vector of its northern end
 */
record CandidateAxis(AxisOffset offset, Vector3D northernEnd) {
    static CandidateAxis of(Site site, AxisOffset offset) {
        return new CandidateAxis(offset, AxisPointing.of(site, offset).northernEnd(site));
    }

    /** From east and up in arcminutes. */
    static CandidateAxis of(Site site, Vector2D offsetArcmin) {
        return of(site, AxisOffset.ofArcminutes(offsetArcmin.getX(), offsetArcmin.getY()));
    }

    /** The direction after the mount has turned it about the axis by this angle, eastward positive. */
    Vector3D turned(Vector3D direction, double eastwardRad) {
        return RodriguesRotation.about(northernEnd, direction, eastwardRad);
    }

    /** Unit vector perpendicular to the axis and the direction, toward the mount's own east. */
    Vector3D east(Vector3D direction) {
        Vector3D east = northernEnd.crossProduct(direction);
        // East is undefined along the axis itself: any perpendicular will do.
        return east.getNorm() < 1e-9 ? direction.orthogonal() : east.normalize();
    }
}
