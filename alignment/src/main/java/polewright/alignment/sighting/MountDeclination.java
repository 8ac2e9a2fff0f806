package polewright.alignment.sighting;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.place.Site;

/**
 * Declination as a mount counts it, from the equator of its own axis: turning about the axis leaves it alone, so whatever
 * of it changes while the mount tracks is drift.
 */
final class MountDeclination {
    private MountDeclination() {}

    /**
     * North positive, radians.
     *
     * @param elevatedEnd ENU unit vector of the axis
     * @param seen ENU unit vector to where something is seen
     */
    static double radians(Site site, Vector3D elevatedEnd, Vector3D seen) {
        // Asked for thousands of times in a fix; unit vectors need no compensated sum.
        double sine =
                elevatedEnd.getX() * seen.getX() + elevatedEnd.getY() * seen.getY() + elevatedEnd.getZ() * seen.getZ();
        // Four times as quick as asin, and keeps its figures near the pole.
        return site.hemisphereSign() * Math.atan2(sine, Math.sqrt(Math.max(0, (1 - sine) * (1 + sine))));
    }
}
