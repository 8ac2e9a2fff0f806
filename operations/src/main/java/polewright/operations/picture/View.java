package polewright.operations.picture;

import java.awt.geom.Point2D;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.decode.RowOrder;
import polewright.image.match.Plate;
import polewright.image.match.StarPair;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.atlas.NamedStar;

/** Maps directions to the sheet on which a placed frame is drawn. */
record View(PlacedFrame placed, Sheet sheet) {
    private static final double SAME_STAR_PIXELS = 3;

    /**
     * The place of an arrow that points at something off the frame.
     *
     * @param direction from +x of the picture toward its bottom, radians
     */
    record Edge(Point2D tip, double direction) {
        Point2D inward(int points) {
            return new Point2D.Double(
                    tip.getX() - Math.cos(direction) * points, tip.getY() - Math.sin(direction) * points);
        }
    }

    /** On the sheet or off it; empty if it is far off or behind the camera. */
    Optional<Point2D> point(Vector3D direction) {
        return placed.match().plate().toPixel(direction).map(sheet::point);
    }

    /** The place, this far inside the edge, in the direction of something off the frame. */
    Edge edge(Vector3D seen, double inset) {
        Point2D toward = way(seen);
        double direction = Math.atan2(toward.getY(), toward.getX());
        double reach = Math.min(
                (sheet.width() / 2.0 - inset) / Math.max(1e-9, Math.abs(Math.cos(direction))),
                (sheet.height() / 2.0 - inset) / Math.max(1e-9, Math.abs(Math.sin(direction))));
        Edge centre = new Edge(new Point2D.Double(sheet.width() / 2.0, sheet.height() / 2.0), direction + Math.PI);
        return new Edge(centre.inward((int) reach), direction);
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
