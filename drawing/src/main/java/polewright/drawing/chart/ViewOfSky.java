package polewright.drawing.chart;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;

/**
 * The sky around one direction, rotated and mirrored as in a view.
 *
 * @param middle direction of the centre
 * @param view orientation of the image
 */
public record ViewOfSky(RefractedDirection middle, View view) {
    // Closer than this to the zenith or a pole, the direction toward it is undefined.
    private static final double TOO_NEAR = 1e-6;

    /** Position in the view: (right, up) from its centre, radians on the sphere. */
    public Vector2D placeOf(RefractedDirection direction) {
        return view.fromSky(StillPoint.seenFrom(middle.enu(), direction.enu()));
    }

    /** Direction of north from the centre, as a unit (right, up) in the view; empty at a pole. */
    public Optional<Vector2D> northward(Site site) {
        return toward(northPole(site));
    }

    /** Direction of east from the centre: the side from which the sky comes; empty at a pole. */
    public Optional<Vector2D> eastward(Site site) {
        Vector3D east = northPole(site).crossProduct(middle.enu());
        return east.getNorm() < TOO_NEAR
                ? Optional.empty()
                : toward(middle.enu().add(east));
    }

    /** Direction of the zenith from the centre; empty at the zenith. */
    public Optional<Vector2D> zenithward() {
        return toward(Vector3D.PLUS_K);
    }

    private Optional<Vector2D> toward(Vector3D direction) {
        Vector3D across = direction.subtract(middle.enu().scalarMultiply(direction.dotProduct(middle.enu())));
        if (across.getNorm() < TOO_NEAR) {
            return Optional.empty();
        }
        Vector3D little =
                middle.enu().add(across.normalize().scalarMultiply(1e-3)).normalize();
        Vector2D seen = view.fromSky(StillPoint.seenFrom(middle.enu(), little));
        return Optional.of(seen.scalarMultiply(1 / seen.getNorm()));
    }

    private static Vector3D northPole(Site site) {
        Angle latitude = site.latitude();
        return new Vector3D(0, latitude.cos(), latitude.sin());
    }
}
