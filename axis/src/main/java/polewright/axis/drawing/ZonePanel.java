package polewright.axis.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.axis.AxisOffset;
import polewright.axis.drawing.LabelPlacer.Placed;
import polewright.axis.drawing.Svg.Anchor;
import polewright.axis.drawing.Svg.Look;
import polewright.axis.drawing.ZoneRim.Stretch;

/** One map of the sky about the pole: the zone, the axis, and what they are called. */
final class ZonePanel {
    /** Class of the group that holds the zone's edge. */
    static final String ZONE = "zone";

    static final double LABEL_SIZE = 14;
    /** Below the map: ruler and scale. */
    static final double RULER_DEPTH = 36;

    // Drawn so by turns, so that stretches of one cause are known again where only one of them is labelled.
    private static final List<String> DASHES = List.of("", "11 5", "2 5", "11 5 2 5", "5 4");
    private static final int MOST_EDGE_LABELS = 5;
    private static final int LETTERS = 16;
    private static final double SMALLEST_REGION = 10;
    // Of the map's width: a larger one would only flood the map.
    private static final double LARGEST_REGION = 2.5;
    private static final double HATCH_APART = 6;
    private static final double FINE = 4;
    private static final double ONE_PLACE = 6;
    private static final double BESIDE_AIM = 30;

    private final ZoneScene scene;
    private final MapView view;
    private final ZoneRim outline;
    private final List<Stretch> causes;
    private final List<Stretch> unlabelled = new ArrayList<>();
    private final List<Placed> labels = new ArrayList<>();
    private final LabelPlacer placer;

    /** @param causesNamed whether the edge's stretches are named, rather than the zone as a whole */
    ZonePanel(ZoneScene scene, MapView view, boolean causesNamed) {
        this.scene = scene;
        this.view = view;
        this.outline = ZoneRim.of(scene.allowance());
        this.causes = outline.causes();
        this.placer = new LabelPlacer(view.area().grown(-2));
        avoidWhatIsDrawn();
        if (causesNamed) {
            nameEdges();
        } else {
            label(List.of("the zone"), List.of(onPaper(scene.allowance().bestAim())));
        }
        namePoints(causesNamed);
    }

    /** Causes that are to be written under the map. */
    List<Stretch> unlabelled() {
        return List.copyOf(unlabelled);
    }

    String dash(Stretch stretch) {
        for (int i = 0; i < causes.size(); i++) {
            if (causes.get(i).words().equals(stretch.words())) {
                return DASHES.get(i % DASHES.size());
            }
        }
        throw new IllegalStateException("no such cause: " + stretch.words());
    }

    /** Whether the regions about the axis are large enough to be seen, and small enough to be recognised. */
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
        ZoneMarks marks = new ZoneMarks(svg, palette);
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
        scene.path().forEach(place -> marks.before(onPaper(place.offset())));
        marks.pole(pole());
        marks.aim(onPaper(scene.allowance().bestAim()));
        scene.now().ifPresent(now -> {
            scene.goal().ifPresent(goal -> marks.arrow("turn", palette.axis(), onPaper(now.offset()), onPaper(goal)));
            marks.now(onPaper(now.offset()));
        });
        svg.closeWindow();
        for (Placed label : labels) {
            write(svg, palette, label);
        }
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

    private static void write(Svg svg, Palette palette, Placed label) {
        if (label.needsLeader()) {
            svg.line("leader", Look.line(palette.guide(), 1), label.leaderStart(), label.pointedAt());
        }
        double x = label.box().middle().getX();
        for (int i = 0; i < label.lines().size(); i++) {
            double y = label.box().top() + LabelPlacer.LINE_HEIGHT * i + 13;
            svg.text(
                    new Vector2D(x, y),
                    Anchor.MIDDLE,
                    label.size(),
                    palette.text(),
                    label.lines().get(i));
        }
    }

    private void avoidWhatIsDrawn() {
        Rulers.boxes(scene, view).forEach(placer::keepOff);
        Stream.of(
                        ZoneMarks.poleBox(pole()),
                        ZoneMarks.aimBox(onPaper(scene.allowance().bestAim())))
                .forEach(placer::keepOff);
        scene.now().ifPresent(now -> placer.keepOff(ZoneMarks.nowBox(onPaper(now.offset()))));
        placer.shun(Strokes.sampled(Strokes.closed(zone()), FINE), 14);
        placer.shun(path(), 60);
        placer.shun(Strokes.sampled(path(), FINE), 3);
        if (showsRegions()) {
            placer.shun(Strokes.sampled(Strokes.closed(region(1)), FINE), 4);
            placer.shun(Strokes.sampled(Strokes.closed(region(2)), FINE), 3);
        }
        scene.now()
                .flatMap(now -> scene.goal().map(goal -> List.of(onPaper(now.offset()), onPaper(goal))))
                .ifPresent(arrow -> placer.shun(Strokes.sampled(arrow, FINE), 20));
    }

    private void nameEdges() {
        for (int i = 0; i < causes.size(); i++) {
            Stretch stretch = causes.get(i);
            List<Vector2D> points = Stream.of(0.5, 0.35, 0.65, 0.2, 0.8)
                    .map(share -> Strokes.at(seen(stretch), share))
                    .filter(view.area()::contains)
                    .toList();
            if (i >= MOST_EDGE_LABELS || points.isEmpty() || !label(words(stretch), points)) {
                unlabelled.add(stretch);
            }
        }
    }

    private static List<String> words(Stretch stretch) {
        List<String> lines = new ArrayList<>();
        if (!stretch.item().isEmpty()) {
            lines.addAll(Lettering.wrapped(stretch.item() + ":", LETTERS, 2));
        }
        lines.addAll(Lettering.wrapped(stretch.cause(), LETTERS, 2));
        return lines;
    }

    private void namePoints(boolean isNear) {
        Vector2D aim = onPaper(scene.allowance().bestAim());
        scene.now().map(now -> onPaper(now.offset())).ifPresent(now -> {
            if (isNear || now.distance(aim) > 24) {
                label(List.of("axis now"), List.of(now));
            }
        });
        if (isNear && pole().distance(aim) < ONE_PLACE) {
            label(List.of("true pole,", "best aim"), List.of(aim));
        } else if (isNear) {
            label(List.of("true pole"), List.of(pole()));
            label(List.of("best aim"), List.of(aim));
        } else if (pole().distance(aim) > 24) {
            label(List.of("true pole"), List.of(pole()));
        }
        scene.goal()
                .map(this::onPaper)
                .filter(goal ->
                        isNear && goal.distance(aim) > BESIDE_AIM && scene.now().isPresent())
                .ifPresent(goal -> label(List.of("after turning"), List.of(goal)));
        if (!scene.path().isEmpty()) {
            Vector2D first = onPaper(scene.path().get(0).offset());
            if (isNear || first.distance(aim) > 24) {
                label(List.of("first fix"), List.of(first));
            }
        }
    }

    private boolean label(List<String> lines, List<Vector2D> pointsAt) {
        if (pointsAt.stream().noneMatch(view.area()::contains)) {
            return false;
        }
        Optional<Placed> placed = placer.place(lines, LABEL_SIZE, pointsAt);
        placed.ifPresent(labels::add);
        return placed.isPresent();
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
