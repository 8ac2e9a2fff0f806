package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.zone.ZoneRim;
import polewright.drawing.zone.ZoneRim.Stretch;
import polewright.drawing.zone.ZoneScene;
import polewright.mount.AxisOffset;

/**
 * The zone as a picture of letters for a terminal, as seen by an observer facing the pole: its edge in letters
 * explained next to it, the axis, its earlier positions, the best aim and the pole.
 *
 * <p>At most {@link #WIDTH} letters wide and {@link #ROWS} lines high. Letters are assumed to be twice as high as wide.
 */
public final class ZoneText {
    public static final int WIDTH = 78;
    public static final int ROWS = 22;

    private static final int MOST_CAUSES = 8;
    private static final int LATEST = 9;
    // Beyond this many extents of the zone from its middle the axis is shown at the map's border.
    private static final double FAR = 2;

    private final ZoneScene scene;
    private final ZoneRim outline;
    private final List<Stretch> causes;
    private final AsciiPlot map;

    private ZoneText(ZoneScene scene) {
        this.scene = scene;
        this.outline = ZoneRim.of(scene.allowance());
        this.causes = outline.causes();
        this.map = AsciiPlot.showing(content());
    }

    /** The picture's lines. */
    public static List<String> of(ZoneScene scene) {
        return new ZoneText(scene).lines();
    }

    private List<String> lines() {
        drawEdge();
        regions().ifPresent(now -> {
            map.line(closed(scene.region(now, 2)), '.');
            map.line(closed(scene.region(now, 1)), ':');
        });
        List<String> legend = new ArrayList<>();
        legend.add("Facing the " + scene.poleWord() + " celestial pole");
        legend.add("");
        for (int i = 0; i < Math.min(MOST_CAUSES, causes.size()); i++) {
            legend.add(letter(causes.get(i)) + "  " + causes.get(i).words());
        }
        legend.add("");
        legend.addAll(marks());
        return map.beside(legend, scene.leftWord(), scene.rightWord());
    }

    private void drawEdge() {
        for (Stretch stretch : outline.stretches()) {
            map.line(stretch.points().stream().map(scene::seen).toList(), letter(stretch));
        }
    }

    /** Those without their own letter share the last sign. */
    private char letter(Stretch stretch) {
        for (int i = 0; i < Math.min(MOST_CAUSES, causes.size()); i++) {
            if (causes.get(i).words().equals(stretch.words())) {
                return (char) ('a' + i);
            }
        }
        return '*';
    }

    /** Drawn from the least to the most important, and listed in reverse. */
    private List<String> marks() {
        List<String> told = new ArrayList<>();
        told.add(mark('P', AxisOffset.NONE, "true pole"));
        told.add(0, mark('A', scene.allowance().bestAim(), "best aim"));
        int from = Math.max(0, scene.path().size() - LATEST);
        boolean seesPath = false;
        for (int i = from; i < scene.path().size(); i++) {
            seesPath |= map.mark(scene.seen(scene.path().get(i).offset()), (char) ('1' + i - from));
        }
        if (seesPath) {
            int last = scene.path().size() - from;
            told.add(last == 1 ? "1  where the axis was before" : "1-" + last + " where the axis was, in order");
        }
        scene.now().flatMap(now -> scene.goal()).ifPresent(goal -> told.add(0, mark('T', goal, "after the turns")));
        scene.now().ifPresent(now -> told.add(0, now(now)));
        if (regions().isPresent()) {
            told.add(":  1 sigma   .  2 sigma");
        }
        return told;
    }

    private String mark(char sign, AxisOffset offset, String words) {
        Optional<Character> covered = map.markAt(scene.seen(offset));
        if (!map.mark(scene.seen(offset), sign)) {
            return sign + "  " + words + ", off the map";
        }
        return sign + "  " + words
                + covered.map(other -> ", on the same spot as " + other).orElse("");
    }

    private String now(ZoneScene.Place now) {
        Vector2D seen = scene.seen(now.offset());
        if (map.markAt(seen).isPresent() || isNear(now.offset())) {
            return mark('F', now.offset(), "the axis now");
        }
        map.markAtBorder(seen, 'F');
        return "F  the axis now: off the map, " + FixWords.direction(now.offset());
    }

    private List<Vector2D> content() {
        List<Vector2D> points = new ArrayList<>(zone());
        points.add(scene.seen(scene.allowance().bestAim()));
        if (isNear(AxisOffset.NONE)) {
            points.add(Vector2D.ZERO);
        }
        scene.now().filter(now -> isNear(now.offset())).ifPresent(now -> {
            points.add(scene.seen(now.offset()));
            List<Vector2D> region = scene.region(now, 2);
            if (region.stream().allMatch(this::isNear)) {
                points.addAll(region);
            }
        });
        return points;
    }

    /** The axis, if its regions are on the map and large enough to be distinguished from its mark. */
    private Optional<ZoneScene.Place> regions() {
        return scene.now().filter(now -> isNear(now.offset()) && map.isSeen(scene.region(now, 2)));
    }

    private boolean isNear(AxisOffset offset) {
        return isNear(scene.seen(offset));
    }

    private boolean isNear(Vector2D seen) {
        Vector2D lowest = AsciiPlot.lowest(zone());
        Vector2D size = AsciiPlot.highest(zone()).subtract(lowest);
        Vector2D fromMiddle = seen.subtract(lowest.add(0.5, size));
        return fromMiddle.getNorm() <= FAR * Math.max(size.getX(), size.getY());
    }

    private List<Vector2D> zone() {
        return outline.points().stream().map(scene::seen).toList();
    }

    private static List<Vector2D> closed(List<Vector2D> ring) {
        List<Vector2D> closed = new ArrayList<>(ring);
        ring.stream().findFirst().ifPresent(closed::add);
        return closed;
    }
}
