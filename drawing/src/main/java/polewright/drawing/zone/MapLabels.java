package polewright.drawing.zone;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.LabelPlacer;
import polewright.drawing.LabelPlacer.Placed;
import polewright.drawing.LabelPlacer.Wanted;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.Strokes;
import polewright.drawing.Svg;
import polewright.drawing.zone.MapMark.Kind;
import polewright.drawing.zone.ZoneRim.Stretch;

/**
 * The labels of a map's marks and edges, each next to what it names.
 *
 * <p>A mark's label is clearly nearer to its mark than to any other, an edge's label is outside the zone. Anything
 * without such a place is named in the key under the map: a label at the wrong mark is worse than none.
 */
final class MapLabels {
    private static final int MOST_EDGE_LABELS = 5;
    private static final int LETTERS = 16;
    private static final double EDGE_GAP = 8;
    private static final double MARK_GAP = 4;
    private static final double ANYWHERE = 1000;
    // Beyond this distance the eye would have to follow a leader across the map.
    private static final double MARK_REACH = 40;
    // The dot of an earlier fix is small and on the path: its label is right next to it or nowhere.
    private static final double DOT_REACH = 8;
    // Margin by which a label is nearer to its own mark than to any other, if there is room and if there is not.
    private static final double AT_A_GLANCE = 9;
    private static final double BY_A_LOOK = 3;
    private static final double COARSE = 4;
    private static final double FINE = 2;
    private static final double EDGE_OFF_MARKS = 8;
    private static final double LEADER_END = 6;
    /** On the overview map: anything this close to the aim is part of the zone. */
    private static final double WITHIN_SPECK = 24;

    private final ZoneScene scene;
    private final MapView view;
    private final List<MapMark> marks;
    private final LabelPlacer placer;
    private final List<Placed> edges = new ArrayList<>();
    private final List<NamedMarks> named = new ArrayList<>();
    private final List<Stretch> keyedEdges = new ArrayList<>();
    private final List<MapMark.Kind> keyedMarks = new ArrayList<>();

    private record NamedMarks(MarkGroup group, Placed label) {}

    MapLabels(ZoneScene scene, MapView view, List<MapMark> marks, LabelPlacer placer) {
        this.scene = scene;
        this.view = view;
        this.marks = List.copyOf(marks);
        this.placer = placer;
    }

    /** Stretches of the edge to be listed under the map. */
    List<Stretch> keyedEdges() {
        return List.copyOf(keyedEdges);
    }

    /** Marks to be explained under the map. */
    List<MapMark.Kind> keyedMarks() {
        return List.copyOf(keyedMarks);
    }

    void nameMarks() {
        for (MarkGroup group : MarkGroup.of(marks)) {
            if (!name(group, group.lines(scene, view.unitsPerArcmin()), AT_A_GLANCE, BY_A_LOOK)) {
                group.named().stream().filter(kind -> kind != Kind.GOAL).forEach(keyedMarks::add);
            }
        }
    }

    /** For a map on which the zone is a speck: one label for the zone and everything in it, then the others. */
    void nameZoneAsOne() {
        Vector2D aim = marks.stream()
                .filter(mark -> mark.kind() == Kind.AIM)
                .map(MapMark::at)
                .findFirst()
                .orElseThrow();
        List<MapMark> zone = marks.stream()
                .filter(mark -> mark.at().distance(aim) <= WITHIN_SPECK)
                .toList();
        MarkGroup speck = new MarkGroup(zone);
        name(speck, speck.linesAsZone(), BY_A_LOOK);
        for (MarkGroup group :
                MarkGroup.of(marks.stream().filter(mark -> !zone.contains(mark)).toList())) {
            if (!name(group, group.lines(scene, view.unitsPerArcmin()), AT_A_GLANCE, BY_A_LOOK)) {
                keyedMarks.addAll(group.named());
            }
        }
    }

    private boolean name(MarkGroup group, List<String> lines, Double... nearerBy) {
        boolean isDot = group.named().equals(List.of(Kind.FIRST_FIX));
        List<Box> targets = group.marks().stream().map(MapMark::box).toList();
        double reach = isDot ? DOT_REACH : MARK_REACH;
        Optional<Placed> placed = Stream.of(nearerBy)
                .flatMap(by -> placer
                        .place(new Wanted(
                                lines,
                                targets,
                                MARK_GAP,
                                reach,
                                FINE,
                                label -> group.isNearestTo(label.letters(), marks, by)))
                        .stream())
                .findFirst();
        placed.ifPresent(label -> named.add(new NamedMarks(group, label)));
        return placed.isPresent();
    }

    void nameEdges(List<Stretch> causes, List<Vector2D> zone) {
        List<Vector2D> rim = Strokes.sampled(Strokes.closed(zone), FINE);
        Predicate<Placed> isOutside = label -> {
            Box box = label.box();
            return rim.stream().noneMatch(box.grown(1)::contains)
                    && !Strokes.encloses(zone, box.middle())
                    && marks.stream().noneMatch(mark -> box.distanceTo(mark.box()) < EDGE_OFF_MARKS)
                    && Strokes.sampled(List.of(label.leaderStart(), label.pointedAt()), FINE).stream()
                            .filter(on -> on.distance(label.pointedAt()) > LEADER_END)
                            .noneMatch(on -> Strokes.encloses(zone, on));
        };
        for (int i = 0; i < causes.size(); i++) {
            Stretch stretch = causes.get(i);
            List<Box> points = Stream.of(0.5, 0.35, 0.65, 0.2, 0.8)
                    .map(share -> Strokes.at(onPaper(stretch), share))
                    .filter(view.area()::contains)
                    .map(Box::at)
                    .toList();
            Optional<Placed> placed = i < MOST_EDGE_LABELS
                    ? placer.place(new Wanted(words(stretch), points, EDGE_GAP, ANYWHERE, COARSE, isOutside))
                    : Optional.empty();
            placed.ifPresentOrElse(edges::add, () -> keyedEdges.add(stretch));
        }
    }

    void draw(Svg svg, Palette palette) {
        for (Placed label : edges) {
            svg.open("edge-label");
            label.write(svg, palette, palette.text());
            svg.close();
        }
        for (NamedMarks one : named) {
            StringBuilder name = new StringBuilder("names");
            one.group()
                    .marks()
                    .forEach(mark -> name.append(' ').append(mark.kind().id()));
            svg.open(name.toString());
            one.label().write(svg, palette, palette.text());
            svg.close();
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

    private List<Vector2D> onPaper(Stretch stretch) {
        return stretch.points().stream()
                .map(offset -> view.onPaper(scene.seen(offset)))
                .toList();
    }
}
