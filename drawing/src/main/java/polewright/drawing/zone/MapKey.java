package polewright.drawing.zone;

import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.drawing.zone.MapMark.Kind;
import polewright.drawing.zone.ZoneRim.Stretch;

/** The key below the maps: marks and edges whose labels did not fit on a map. */
final class MapKey {
    private static final double LEFT = 12;
    private static final double WORDS = 50;
    private static final double SIZE = 14;
    private static final double LINE = 18;
    // A flag on its stake is taller than a line.
    private static final double MARK_LINE = 24;
    private static final int LETTERS = 35;

    private final List<ZonePanel> panels;
    private final List<Kind> marks;

    MapKey(List<ZonePanel> panels) {
        this.panels = List.copyOf(panels);
        this.marks = panels.stream()
                .flatMap(panel -> panel.labels().keyedMarks().stream())
                .distinct()
                .sorted()
                .toList();
    }

    double height() {
        long lines = panels.stream()
                .flatMap(panel -> panel.labels().keyedEdges().stream())
                .flatMap(MapKey::words)
                .count();
        return MARK_LINE * marks.size() + LINE * lines;
    }

    /** Draws the key with its first baseline at {@code top}; returns the baseline after it. */
    double draw(Svg svg, Palette palette, double top) {
        double y = top;
        svg.open("key-marks");
        for (Kind kind : marks) {
            new ZoneMarks(svg, palette).draw(kind, new Vector2D(LEFT + 15, y - 5));
            svg.text(new Vector2D(WORDS, y), Anchor.START, SIZE, palette.text(), kind.words());
            y += MARK_LINE;
        }
        svg.close();
        for (ZonePanel panel : panels) {
            for (Stretch stretch : panel.labels().keyedEdges()) {
                Look look = Look.line(palette.ink(), 2.4).dashed(panel.dash(stretch));
                svg.line("key", look, new Vector2D(LEFT, y - 5), new Vector2D(LEFT + 30, y - 5));
                for (String line : words(stretch).toList()) {
                    svg.text(new Vector2D(WORDS, y), Anchor.START, SIZE, palette.text(), line);
                    y += LINE;
                }
            }
        }
        return y;
    }

    private static Stream<String> words(Stretch stretch) {
        return Lettering.wrapped(stretch.words(), LETTERS, 2).stream();
    }
}
