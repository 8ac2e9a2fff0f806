package polewright.drawing.zone;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.LabelPlacer;
import polewright.drawing.Palette;
import polewright.drawing.Strokes;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Look;
import polewright.drawing.zone.MapMark.Kind;
import polewright.drawing.zone.ZoneRim.Stretch;
import polewright.mount.AxisOffset;

/** One map of the sky around the pole: the zone, the axis, and their labels. */
final class ZonePanel {
    /** CSS class of the group with the zone's edge. */
    static final String ZONE = "zone";

    /** Height of ruler and scale below the map. */
    static final double RULER_DEPTH = 36;

    // Used in turn, so that stretches with the same cause are recognisable when only one of them is labelled.
    private static final List<String> DASHES = List.of("", "11 5", "2 5", "11 5 2 5", "5 4");
    private static final double SMALLEST_REGION = 10;
    // In map widths: a larger one would only flood the map.
    private static final double LARGEST_REGION = 2.5;
    private static final double HATCH_APART = 6;
    private static final double FINE = 4;
    private static final double BESIDE_AIM = 30;

    private final ZoneScene scene;
    private final MapView view;
    private final ZoneRim outline;
    private final List<Stretch> causes;
    private final List<MapMark> marks;
    private final MapLabels labels;

    /** What is labelled in the zone. */
    enum Naming {
        /** Each stretch of its edge and each mark in it. */
        EDGES_AND_MARKS,
        /** Only the zone, as a speck on the overview map. */
        WHOLE
    }

    ZonePanel(ZoneScene scene, MapView view, Naming naming) {
        this.scene = scene;
        this.view = view;
        this.outline = ZoneRim.of(scene.allowance());
        this.causes = outline.causes();
        this.marks = marks(naming);
        this.labels = new MapLabels(scene, view, marks, placer(naming));
        switch (naming) {
            case EDGES_AND_MARKS -> {
                labels.nameMarks();
                labels.nameEdges(causes, zone());
            }
            case WHOLE -> labels.nameZoneAsOne();
        }
    }

    MapLabels labels() {
        return labels;
    }

    String dash(Stretch stretch) {
        for (int i = 0; i < causes.size(); i++) {
            if (causes.get(i).words().equals(stretch.words())) {
                return DASHES.get(i % DASHES.size());
            }
        }
        throw new IllegalStateException("no such cause: " + stretch.words());
    }

    /** Whether the regions around the axis are large enough to see and small enough to recognise. */
    boolean showsRegions() {
        return scene.now()
                .map(now -> view.onPaper(scene.region(now, 2)))
                .filter(ring -> !ring.isEmpty())
                .map(MapView::extent)
                .map(box -> Math.max(box.width(), box.height()))
                .filter(size -> size >= SMALLEST_REGION
                        && size <= LARGEST_REGION * view.area().width())
                .isPresent();
    }

    void draw(Svg svg, Palette palette) {
        ZoneMarks pen = new ZoneMarks(svg, palette);
        svg.openWindow(view.area());
        svg.open("ground");
        svg.polygon(Look.filled(palette.glass(), "none", 0), corners(zone()));
        svg.close();
        edges(svg, palette);
        if (showsRegions()) {
            svg.open("sigmas");
            for (List<Vector2D> line : shading()) {
                svg.line(Look.line(palette.axis(), 1.1), line.get(0), line.get(1));
            }
            svg.polygon(Look.line(palette.axis(), 1.6).dashed("4 4"), corners(region(2)));
            svg.close();
        }
        List<Vector2D> path = path();
        svg.polyline(Look.line(palette.axis(), 1.2), path);
        scene.path().forEach(place -> pen.before(onPaper(place.offset())));
        pen.pole(pole());
        pen.aim(onPaper(scene.allowance().bestAim()));
        scene.now().ifPresent(now -> {
            scene.goal().ifPresent(goal -> pen.arrow("turn", palette.axis(), onPaper(now.offset()), onPaper(goal)));
            // With several possible places, none is more than a guess.
            if (scene.possible().isEmpty()) {
                pen.now(onPaper(now.offset()));
            }
        });
        scene.possible().forEach(place -> pen.possible(onPaper(place)));
        svg.closeWindow();
        labels.draw(svg, palette);
        new Rulers(svg, palette, scene, view).draw();
    }

    private void edges(Svg svg, Palette palette) {
        svg.open(ZONE);
        List<Stretch> stretches = outline.stretches();
        for (Stretch stretch : stretches) {
            svg.polyline(Look.line(palette.ink(), 2.4).dashed(dash(stretch)), seen(stretch));
        }
        svg.close();
        if (stretches.size() > 1) {
            stretches.forEach(
                    s -> svg.circle(Look.filled(palette.background(), palette.ink(), 1.4), seen(s).get(0), 2.6));
        }
    }

    /** The marks on this map. */
    private List<MapMark> marks(Naming naming) {
        List<MapMark> found = new ArrayList<>();
        Vector2D aim = onPaper(scene.allowance().bestAim());
        found.add(new MapMark(Kind.AIM, aim, ZoneMarks.aimBox(aim)));
        found.add(new MapMark(Kind.POLE, pole(), ZoneMarks.poleBox(pole())));
        for (int i = 0; i < scene.path().size(); i++) {
            Vector2D before = onPaper(scene.path().get(i).offset());
            found.add(new MapMark(i == 0 ? Kind.FIRST_FIX : Kind.EARLIER, before, ZoneMarks.beforeBox(before)));
        }
        scene.now().map(place -> onPaper(place.offset())).ifPresent(now -> {
            if (scene.possible().isEmpty()) {
                found.add(new MapMark(Kind.NOW, now, ZoneMarks.nowBox(now)));
            }
            scene.goal()
                    .map(this::onPaper)
                    .filter(goal -> naming == Naming.EDGES_AND_MARKS
                            && goal.distance(aim) > BESIDE_AIM
                            && ZoneMarks.isArrow(now, goal))
                    .ifPresent(goal -> found.add(new MapMark(Kind.GOAL, goal, ZoneMarks.headBox(now, goal))));
        });
        scene.possible().stream()
                .map(this::onPaper)
                .forEach(at -> found.add(new MapMark(Kind.POSSIBLE, at, ZoneMarks.nowBox(at))));
        return found.stream().filter(mark -> view.area().contains(mark.at())).toList();
    }

    /** A placer that avoids everything drawn. */
    private LabelPlacer placer(Naming naming) {
        LabelPlacer placer = new LabelPlacer(view.area().grown(-2));
        Rulers.boxes(scene, view).forEach(placer::keepOff);
        marks.forEach(mark -> placer.keepOff(mark.box().grown(1)));
        placer.shun(Strokes.sampled(Strokes.closed(zone()), FINE), 14);
        // The overview map has enough room to avoid the axis's path.
        placer.shun(Strokes.sampled(path(), FINE), naming == Naming.WHOLE ? 8 : 3);
        if (showsRegions()) {
            placer.shun(Strokes.sampled(Strokes.closed(region(1)), FINE), 4);
            placer.shun(Strokes.sampled(Strokes.closed(region(2)), FINE), 3);
        }
        scene.now()
                .flatMap(now -> scene.goal().map(goal -> List.of(onPaper(now.offset()), onPaper(goal))))
                .ifPresent(arrow -> placer.shun(Strokes.sampled(arrow, FINE), 20));
        return placer;
    }

    private List<Vector2D> zone() {
        return outline.points().stream().map(this::onPaper).toList();
    }

    private List<Vector2D> seen(Stretch stretch) {
        return stretch.points().stream().map(this::onPaper).toList();
    }

    private List<Vector2D> region(double sigmas) {
        return view.onPaper(scene.region(scene.now().orElseThrow(), sigmas));
    }

    private List<List<Vector2D>> shading() {
        Box extent = MapView.extent(region(1));
        int lines = (int) Math.max(3, Math.rint(Math.hypot(extent.width(), extent.height()) / 2 / HATCH_APART) * 2 + 1);
        return scene.shading(scene.now().orElseThrow(), lines).stream()
                .map(view::onPaper)
                .toList();
    }

    private List<Vector2D> path() {
        return Stream.concat(scene.path().stream(), scene.now().stream())
                .map(place -> onPaper(place.offset()))
                .toList();
    }

    private Vector2D pole() {
        return onPaper(AxisOffset.NONE);
    }

    private Vector2D onPaper(AxisOffset offset) {
        return view.onPaper(scene.seen(offset));
    }

    private static Vector2D[] corners(List<Vector2D> points) {
        return points.toArray(Vector2D[]::new);
    }
}
