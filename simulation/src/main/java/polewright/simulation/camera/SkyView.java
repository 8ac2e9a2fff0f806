package polewright.simulation.camera;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * The exact mapping from the sky to the pixels of a camera at one instant, and back: apparent places and refraction
 * at that time, the camera's attitude, pinhole, distortion, mirror.
 */
public final class SkyView {
    private final Projection projection;
    private final Rotation cameraToEnu;
    private final double[][] matrix;
    private final ObservingMoment moment;

    SkyView(Projection projection, Rotation cameraToEnu, ObservingMoment moment) {
        this.projection = projection;
        this.cameraToEnu = cameraToEnu;
        this.matrix = cameraToEnu.getMatrix();
        this.moment = moment;
    }

    static SkyView of(Exposure exposure, double secondsFromMiddle) {
        return new SkyView(
                new Projection(exposure.camera()),
                exposure.path().cameraToEnu(secondsFromMiddle),
                exposure.momentAt(secondsFromMiddle));
    }

    public ObservingMoment moment() {
        return moment;
    }

    public Rotation cameraToEnu() {
        return cameraToEnu;
    }

    Projection projection() {
        return projection;
    }

    /** Column and row of a star's image, inside the picture or near it; empty when it is far off or behind. */
    public Optional<Vector2D> pixelOf(CatalogueStar star) {
        double[] pixel = new double[2];
        return toPixel(moment.refracted(moment.apparent(star)), pixel)
                ? Optional.of(new Vector2D(pixel))
                : Optional.empty();
    }

    /** The ICRS direction, epoch of the moment, of a place in the picture. */
    public CatalogueStar icrsAt(double column, double row) {
        Vector3D enu = cameraToEnu.applyTo(projection.toDirection(column, row));
        ApparentPlace place = moment.apparent(moment.hourAngle(moment.airless(new RefractedDirection(enu))));
        return moment.catalogueDirection(place);
    }

    /** As {@link Projection#toPixel}, for a direction over the site. */
    boolean toPixel(RefractedDirection direction, double[] pixel) {
        Vector3D v = direction.enu();
        return projection.toPixel(camera(v, 0), camera(v, 1), camera(v, 2), pixel);
    }

    private double camera(Vector3D enu, int axis) {
        return matrix[0][axis] * enu.getX() + matrix[1][axis] * enu.getY() + matrix[2][axis] * enu.getZ();
    }
}
