package polewright.operations.picture;

import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.drawing.frame.FrameScene;
import polewright.drawing.frame.FrameScene.Mark;
import polewright.drawing.frame.FrameScene.Place;
import polewright.drawing.frame.FrameScene.Star;
import polewright.image.match.StarPair;
import polewright.image.star.FoundStar;
import polewright.mount.AxisEstimate;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.Site;

/** What is drawn over a placed frame. */
public final class PlacedScene {
    private PlacedScene() {}

    /**
     * On a screen, where nothing explains the marks of unmatched stars.
     *
     * @param axis where the mount's axis pointed when the frame was taken, if known
     */
    public static FrameScene onScreen(
            PlacedFrame placed, CameraAttitude attitude, Site site, Optional<AxisEstimate> axis) {
        int columns = placed.match().plate().width();
        int rows = placed.match().plate().height();
        View view = new View(placed, PictureScale.forScreen(columns, rows, placed.rows(), ScreenPicture.MOST_WIDE));
        return scene(
                view,
                List.of(),
                PointMarks.truePole(placed, attitude, site),
                axis.map(known -> PointMarks.axis(placed, attitude, known)));
    }

    /** In a file. */
    static FrameScene inFile(PlacedFrame placed, PictureScale scale, PointMark pole, Optional<PointMark> axis) {
        View view = new View(placed, scale);
        Set<FoundStar> matched = new HashSet<>();
        placed.match().pairs().forEach(pair -> matched.add(pair.found()));
        List<Place> unmatched = placed.stars().stars().stream()
                .filter(star -> !matched.contains(star))
                .map(star -> place(scale.point(star.x(), star.y())))
                .toList();
        return scene(view, unmatched, pole, axis);
    }

    private static FrameScene scene(View view, List<Place> unmatched, PointMark pole, Optional<PointMark> axis) {
        PlacedFrame placed = view.placed();
        return new FrameScene(
                placed.name(),
                placed.at(),
                view.scale().width(),
                view.scale().height(),
                placed.match().starsFound(),
                stars(view),
                unmatched,
                mark(view, pole),
                axis.map(known -> mark(view, known)),
                placed.match().plate().scale().times(1 / view.scale().perPixel()),
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
                        place(view.scale().point(pair.found().x(), pair.found().y())),
                        pair.magnitude(),
                        Optional.ofNullable(names.get(pair))))
                .toList();
    }

    private static Mark mark(View view, PointMark mark) {
        Optional<Point2D> point = view.point(mark.direction());
        View.Edge edge = view.edge(mark.direction());
        List<Place> outline = new ArrayList<>();
        for (Vector3D corner : mark.outline()) {
            view.point(corner).map(PlacedScene::place).ifPresent(outline::add);
        }
        return new Mark(
                mark.label(),
                point.map(PlacedScene::place),
                point.filter(view.scale()::holds).isPresent(),
                place(edge.tip()),
                edge.direction(),
                new Angle(Vector3D.angle(view.placed().match().plate().centre(), mark.direction())),
                outline.size() == mark.outline().size() ? outline : List.of());
    }

    private static Place place(Point2D point) {
        return new Place(point.getX(), point.getY());
    }

    private static double angle(Point2D way) {
        return Math.atan2(way.getY(), way.getX());
    }
}
