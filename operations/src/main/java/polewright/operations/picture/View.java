package polewright.operations.picture;

import java.awt.geom.Point2D;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.decode.RowOrder;
import polewright.image.match.Plate;
import polewright.image.match.StarPair;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.atlas.NamedStar;

/** Maps directions to the picture on which a placed frame is drawn. */
record View(PlacedFrame placed, PictureScale scale) {
    private static final double SAME_STAR_PIXELS = 3;

    /**
     * The place of an arrow that points at something off the frame.
     *
     * @param direction from +x of the picture toward its bottom, radians
     */
    record Edge(Point2D tip, double direction) {}

    /** On the picture or off it; empty if it is far off or behind the camera. */
    Optional<Point2D> point(Vector3D direction) {
        return placed.match().plate().toPixel(direction).map(scale::point);
    }

    /** Where the line from the centre toward a direction leaves the picture. */
    Edge edge(Vector3D seen) {
        Point2D toward = way(seen);
        double direction = Math.atan2(toward.getY(), toward.getX());
        double reach = Math.min(
                scale.width() / 2.0 / Math.max(1e-9, Math.abs(Math.cos(direction))),
                scale.height() / 2.0 / Math.max(1e-9, Math.abs(Math.sin(direction))));
        return new Edge(
                new Point2D.Double(
                        scale.width() / 2.0 + reach * Math.cos(direction),
                        scale.height() / 2.0 + reach * Math.sin(direction)),
                direction);
    }

    /** The direction on the picture from its centre, to the right and down; its length is the sine of the distance. */
    Point2D way(Vector3D direction) {
        Plate plate = placed.match().plate();
        double right = direction.dotProduct(plate.right()) * (plate.mirrored() ? -1 : 1);
        double down = direction.dotProduct(plate.down()) * (placed.rows() == RowOrder.BOTTOM_UP ? -1 : 1);
        return new Point2D.Double(right, down);
    }

    /** Toward the north at the centre, ICRS. */
    Vector3D north() {
        double ra = placed.match().plate().rightAscension().radians();
        double dec = placed.match().plate().declination().radians();
        return new Vector3D(-Math.sin(dec) * Math.cos(ra), -Math.sin(dec) * Math.sin(ra), Math.cos(dec));
    }

    /** Toward the east at the centre, ICRS. */
    Vector3D east() {
        double ra = placed.match().plate().rightAscension().radians();
        return new Vector3D(-Math.sin(ra), Math.cos(ra), 0);
    }

    /** The star of the frame that has this name, if it was matched. */
    Optional<StarPair> pairOf(NamedStar star) {
        Plate plate = placed.match().plate();
        Vector3D direction = new Vector3D(
                star.place().rightAscension().radians(),
                star.place().declination().radians());
        if (Vector3D.angle(direction, plate.centre()) > plate.radius().radians()) {
            return Optional.empty();
        }
        return placed.match().pairs().stream()
                .filter(p -> Vector3D.angle(p.catalogue(), direction)
                        < SAME_STAR_PIXELS * plate.scale().radians())
                .findFirst();
    }
}
