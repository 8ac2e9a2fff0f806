package polewright.operations.picture;

import java.awt.geom.Point2D;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.match.StarPair;
import polewright.mount.AxisEstimate;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.Site;

/**
 * The overlay of a placed frame on a screen. Coordinates are points of its {@link ScreenPicture}, from the upper left
 * corner, x to the right and y down.
 *
 * @param name of its file
 * @param at middle of the exposure
 * @param width points across
 * @param height points down
 * @param found number of stars detected
 * @param stars the identified ones, brightest first
 * @param pole the elevated celestial pole, to which the axis must point
 * @param axis the mount's axis, if known
 * @param scale a scale bar
 * @param north direction of north at its centre, from +x toward +y, radians
 * @param east direction of east at its centre, from +x toward +y, radians
 */
public record LiveFrame(
        String name,
        Optional<Instant> at,
        int width,
        int height,
        int found,
        List<Star> stars,
        Mark pole,
        Optional<Mark> axis,
        Scale scale,
        double north,
        double east) {
    private static final int[] SCALE_ARCSEC = {
        1, 2, 5, 10, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 18_000, 36_000, 72_000
    };
    // Largest fraction of the width.
    private static final double SCALE_SHARE = 0.25;

    public LiveFrame {
        stars = List.copyOf(stars);
    }

    /** A point of the picture. */
    public record Place(double x, double y) {}

    /**
     * An identified star.
     *
     * @param name if it has one
     */
    public record Star(Place place, double magnitude, Optional<String> name) {}

    /**
     * The pole or the axis.
     *
     * @param label the text next to it
     * @param place its position, also if it is slightly off the picture; otherwise empty
     * @param isOnFrame whether it is on the picture
     * @param edge a point at the picture's edge, on the line to it from the centre
     * @param direction of that line, from +x toward +y, radians
     * @param away its distance from the centre, on the sky
     * @param outline of its 95 % confidence region; empty if that is not known
     */
    public record Mark(
            String label,
            Optional<Place> place,
            boolean isOnFrame,
            Place edge,
            double direction,
            Angle away,
            List<Place> outline) {
        public Mark {
            outline = List.copyOf(outline);
        }
    }

    /**
     * A scale bar.
     *
     * @param points its length
     * @param sky the angle it spans at the centre
     */
    public record Scale(double points, Angle sky) {
        /** A scale bar for a picture magnified this many times. */
        Scale closer(int times, int width) {
            return fitting(times * points / sky.arcseconds(), width);
        }

        static Scale fitting(double pointsPerArcsec, int width) {
            int longest = SCALE_ARCSEC[0];
            for (int arcsec : SCALE_ARCSEC) {
                longest = arcsec * pointsPerArcsec <= SCALE_SHARE * width ? arcsec : longest;
            }
            return new Scale(longest * pointsPerArcsec, Angle.ofArcseconds(longest));
        }
    }

    /**
     * The overlay of a placed frame.
     *
     * @param axis where the mount's axis pointed when the frame was taken, if known
     */
    public static LiveFrame of(PlacedFrame placed, CameraAttitude attitude, Site site, Optional<AxisEstimate> axis) {
        int columns = placed.match().plate().width();
        int rows = placed.match().plate().height();
        View view = new View(placed, Sheet.forScreen(columns, rows, placed.rows(), ScreenPicture.MOST_WIDE));
        return new LiveFrame(
                placed.name(),
                placed.at(),
                view.sheet().width(),
                view.sheet().height(),
                placed.match().starsFound(),
                stars(view),
                mark(view, PointMarks.truePole(placed, attitude, site)),
                axis.map(known -> mark(view, PointMarks.axis(placed, attitude, known))),
                scale(view),
                angle(view.way(view.north())),
                angle(view.way(view.east())));
    }

    private static List<Star> stars(View view) {
        Map<StarPair, String> names = new HashMap<>();
        for (NamedStar named : NamedStars.bundled().all()) {
            view.pairOf(named).ifPresent(pair -> names.putIfAbsent(pair, named.label()));
        }
        return view.placed().match().pairs().stream()
                .map(pair -> new Star(
                        place(view.sheet().point(pair.found().x(), pair.found().y())),
                        pair.magnitude(),
                        Optional.ofNullable(names.get(pair))))
                .toList();
    }

    private static Mark mark(View view, PointMark mark) {
        Optional<Point2D> point = view.point(mark.direction());
        View.Edge edge = view.edge(mark.direction(), 0);
        List<Place> outline = new ArrayList<>();
        for (Vector3D corner : mark.outline()) {
            view.point(corner).map(LiveFrame::place).ifPresent(outline::add);
        }
        return new Mark(
                mark.label(),
                point.map(LiveFrame::place),
                point.filter(view.sheet()::holds).isPresent(),
                place(edge.tip()),
                edge.direction(),
                new Angle(Vector3D.angle(view.placed().match().plate().centre(), mark.direction())),
                outline.size() == mark.outline().size() ? outline : List.of());
    }

    private static Scale scale(View view) {
        double pointsPerArcsec =
                view.sheet().perPixel() / view.placed().match().plate().scale().arcseconds();
        return Scale.fitting(pointsPerArcsec, view.sheet().width());
    }

    private static Place place(Point2D point) {
        return new Place(point.getX(), point.getY());
    }

    private static double angle(Point2D way) {
        return Math.atan2(way.getY(), way.getX());
    }
}
