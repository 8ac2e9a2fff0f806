package polewright.drawing.zone;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import polewright.drawing.DrawnSvg;
import polewright.drawing.DrawnSvg.Lettered;

/** The labels of a zone's marks and edges, as read back from each map of its picture. */
record DrawnLabels(DrawnSvg drawn, List<Window> maps) {
    /** A mark on a map: {@code kind} is the class that labels use for it. */
    record Mark(String kind, Point2D at, Rectangle2D box) {}

    /** One map with the marks in it. */
    record Window(Rectangle2D place, List<Mark> marks, List<Line2D> zone) {}

    // Dots no farther apart than this look like one.
    private static final double SAME_PLACE = 9;
    // On the overview map, everything this close to the aim is part of the zone.
    private static final double SPECK = 24;

    static DrawnLabels of(DrawnSvg drawn) {
        return new DrawnLabels(
                drawn, drawn.windows().stream().map(DrawnLabels::window).toList());
    }

    private static Window window(DrawnSvg map) {
        Rectangle2D place = map.place();
        List<Mark> marks = new ArrayList<>();
        for (String kind : List.of("now", "pole")) {
            map.parts(kind).forEach(part -> add(marks, place, kind, part.extent()));
        }
        Line2D stake = map.line("stake");
        if (place.contains(stake.getP1())) {
            marks.add(new Mark("aim", stake.getP1(), map.parts("aim").get(0).extent()));
        }
        List<DrawnSvg> dots = map.parts("before");
        for (int i = 0; i < dots.size(); i++) {
            add(marks, place, i == 0 ? "first-fix" : "earlier", dots.get(i).extent());
        }
        return new Window(place, marks, map.outlines("ground").get(0));
    }

    private static void add(List<Mark> marks, Rectangle2D place, String kind, Rectangle2D box) {
        if (place.contains(box.getCenterX(), box.getCenterY())) {
            marks.add(new Mark(kind, new Point2D.Double(box.getCenterX(), box.getCenterY()), box));
        }
    }

    void assertNearestToTheirOwnMarks() {
        for (DrawnSvg label : drawn.partsOf("names")) {
            Window map = around(label);
            if (label.classes().contains("goal")) {
                // An arrowhead is not a mark of its own here; but no other mark may claim its label by touching it.
                continue;
            }
            List<Mark> own = map.marks().stream()
                    .filter(mark -> !mark.kind().equals("earlier"))
                    .filter(mark -> label.classes().contains(mark.kind()))
                    .toList();
            double reach = label.texts().get(0).content().startsWith("the zone") ? SPECK : SAME_PLACE;
            assertThat(own).as(label.classes().toString()).isNotEmpty();
            for (Mark other : map.marks()) {
                boolean isOneWithOwn = other.kind().equals("earlier")
                        && own.stream().anyMatch(mark -> mark.at().distance(other.at()) < reach);
                if (!own.contains(other) && !isOneWithOwn) {
                    double nearest = own.stream()
                            .mapToDouble(mark -> apart(label, mark.box()))
                            .min()
                            .orElseThrow();
                    assertThat(nearest)
                            .as("%s from its own mark, against %s", label.classes(), other)
                            .isLessThan(apart(label, other.box()));
                }
            }
        }
    }

    void assertEdgeLabelsOutsideTheZone() {
        for (DrawnSvg label : drawn.partsOf("edge-label")) {
            Path2D zone = new Path2D.Double();
            for (Line2D side : around(label).zone()) {
                if (zone.getCurrentPoint() == null) {
                    zone.moveTo(side.getX1(), side.getY1());
                }
                zone.lineTo(side.getX2(), side.getY2());
            }
            zone.closePath();
            for (Lettered text : label.texts()) {
                assertThat(zone.intersects(text.box())).as(text.content()).isFalse();
            }
        }
    }

    /** On the map of the zone, which is the last one, or in the key. */
    void assertEveryMarkIsNamed() {
        Window map = maps.get(maps.size() - 1);
        Set<String> named = new HashSet<>();
        for (DrawnSvg label : drawn.partsOf("names")) {
            if (around(label).equals(map)) {
                named.addAll(label.classes());
            }
        }
        List<String> key = drawn.parts("key-marks").get(0).texts().stream()
                .map(Lettered::content)
                .toList();
        for (Mark mark : map.marks()) {
            for (MapMark.Kind kind : MapMark.Kind.values()) {
                if (kind.id().equals(mark.kind()) && kind != MapMark.Kind.EARLIER) {
                    assertThat(named.contains(kind.id()) || key.contains(kind.words()))
                            .as(kind + " named")
                            .isTrue();
                }
            }
        }
    }

    private Window around(DrawnSvg label) {
        Rectangle2D box = label.texts().get(0).box();
        return maps.stream()
                .filter(map -> map.place().contains(box.getCenterX(), box.getCenterY()))
                .findFirst()
                .orElseThrow();
    }

    private static double apart(DrawnSvg label, Rectangle2D mark) {
        return label.texts().stream()
                .mapToDouble(text -> apart(text.box(), mark))
                .min()
                .orElseThrow();
    }

    static double apart(Rectangle2D one, Rectangle2D other) {
        double across = Math.max(0, Math.max(one.getMinX() - other.getMaxX(), other.getMinX() - one.getMaxX()));
        double along = Math.max(0, Math.max(one.getMinY() - other.getMaxY(), other.getMinY() - one.getMaxY()));
        return Math.hypot(across, along);
    }
}
