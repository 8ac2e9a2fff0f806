package polewright.drawing.zone;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.zone.ZonePanel.Naming;
import polewright.drawing.zone.ZoneRim.Stretch;
import polewright.mount.AxisOffset;
import polewright.sky.PlainNumber;

/**
 * The tolerance zone and the axis tonight: the zone to scale, labelled with what goes wrong beyond each stretch of its
 * edge, the axis with its regions of 1 and 2 sigma and its path, the best aim and the true pole.
 *
 * <p>As seen when facing the pole. If the axis is so far off that the zone would be a speck, there are two maps: an
 * overview and the zone.
 */
public final class ZoneDrawing {
    private static final int WIDTH = 360;
    private static final double MARGIN = 12;
    private static final double LEFT = 26;
    private static final double TOP = 56;
    private static final double ONE_MAP = 316;
    private static final double WIDE_MAP = 190;
    private static final double ZONE_MAP = 270;
    private static final double ZONE_SHARE = 0.6;
    private static final double WORDY_SHARE = 0.5;
    private static final int FEW_CAUSES = 3;
    private static final double FULL_SHARE = 0.8;
    private static final double SIZE = 14;
    private static final double LINE = 18;
    // A smaller zone shows nothing of its shape.
    private static final double SMALLEST_ZONE = 84;
    // On the zone's own map, points within this many of its extents are included.
    private static final double NEAR = 2.2;

    private final ZoneScene scene;
    private final List<Vector2D> zone;

    private ZoneDrawing(ZoneScene scene) {
        this.scene = scene;
        this.zone =
                ZoneRim.of(scene.allowance()).points().stream().map(scene::seen).toList();
    }

    /** A complete SVG document, which can also be embedded in a page. */
    public static String svg(ZoneScene scene, Palette palette) {
        return new ZoneDrawing(scene).drawn(palette);
    }

    private String drawn(Palette palette) {
        MapView all = fitting(map(TOP, ONE_MAP), everything());
        Box extent = MapView.extent(all.onPaper(zone));
        boolean isOne = Math.max(extent.width(), extent.height()) >= SMALLEST_ZONE;
        return isOne ? oneMap(all, palette) : twoMaps(palette);
    }

    private String oneMap(MapView view, Palette palette) {
        ZonePanel panel = new ZonePanel(scene, view, Naming.EDGES_AND_MARKS);
        List<String> notes = notes(panel.showsRegions());
        double below = view.area().bottom() + ZonePanel.RULER_DEPTH + LINE;
        MapKey key = new MapKey(List.of(panel));
        Svg svg = begun(below + LINE * notes.size() + key.height(), palette);
        panel.draw(svg, palette);
        write(svg, palette, notes, key.draw(svg, palette, below));
        return svg.finished();
    }

    private String twoMaps(Palette palette) {
        MapView wide = MapView.fitting(map(TOP, WIDE_MAP), everything(), FULL_SHARE);
        double between = wide.area().bottom() + ZonePanel.RULER_DEPTH + LINE;
        MapView near = fitting(map(between + 12, ZONE_MAP), nearZone());
        ZonePanel all = new ZonePanel(scene, wide, Naming.WHOLE);
        ZonePanel panel = new ZonePanel(scene, near, Naming.EDGES_AND_MARKS);
        List<String> notes = notes(all.showsRegions() || panel.showsRegions());
        double below = near.area().bottom() + ZonePanel.RULER_DEPTH + LINE;
        MapKey key = new MapKey(List.of(all, panel));
        Svg svg = begun(below + LINE * notes.size() + key.height(), palette);
        all.draw(svg, palette);
        String larger = "The zone, " + times(near.unitsPerArcmin() / wide.unitsPerArcmin()) + " times larger:";
        svg.text(new Vector2D(MARGIN, between), Anchor.START, 15, palette.text(), larger);
        panel.draw(svg, palette);
        write(svg, palette, notes, key.draw(svg, palette, below));
        return svg.finished();
    }

    private Svg begun(double height, Palette palette) {
        Svg svg = new Svg(WIDTH, (int) Math.ceil(height), title(), description(), palette);
        svg.text(new Vector2D(MARGIN, 24), Anchor.START, 16, palette.text(), "Where the axis may point");
        String standpoint = "As you face the " + scene.poleWord() + " celestial pole";
        svg.text(new Vector2D(MARGIN, 44), Anchor.START, SIZE, palette.text(), standpoint);
        return svg;
    }

    private static void write(Svg svg, Palette palette, List<String> notes, double top) {
        double y = top;
        for (String note : notes) {
            svg.text(new Vector2D(MARGIN, y), Anchor.START, SIZE, palette.text(), note);
            y += LINE;
        }
    }

    /** In two dimensions, 39 % of a Gaussian is within 1 sigma and 86 % within 2. */
    private List<String> notes(boolean showsRegions) {
        List<String> notes = new ArrayList<>();
        if (scene.now().isEmpty()) {
            notes.add("No fix yet.");
        } else if (showsRegions) {
            notes.add("Chance that the axis is in the shaded");
            notes.add("region: 40 %; in the dashed line: 86 %.");
        } else if (scene.now().get().covariance().isPresent()) {
            notes.add("Its uncertainty is smaller than its mark.");
        }
        if (!scene.possible().isEmpty()) {
            notes.add("Open diamonds: possible positions.");
        }
        if (scene.now().isPresent() && scene.goal().isPresent()) {
            notes.add("Dotted arrow: the advised turns.");
        }
        if (!scene.path().isEmpty()) {
            notes.add("Dots: where the axis was before.");
        }
        return notes;
    }

    /** As large as possible with room for words next to the zone. */
    private MapView fitting(Box area, List<Vector2D> points) {
        MapView full = MapView.fitting(area, points, FULL_SHARE);
        boolean isWordy = ZoneRim.of(scene.allowance()).causes().size() > FEW_CAUSES;
        MapView byZone = MapView.fitting(area, zone, isWordy ? WORDY_SHARE : ZONE_SHARE);
        return full.unitsPerArcmin() < byZone.unitsPerArcmin()
                ? full
                : new MapView(area, full.middle(), byZone.unitsPerArcmin());
    }

    private List<Vector2D> everything() {
        List<Vector2D> points = new ArrayList<>(zone);
        points.add(Vector2D.ZERO);
        points.add(scene.seen(scene.allowance().bestAim()));
        scene.path().forEach(place -> points.add(scene.seen(place.offset())));
        scene.possible().forEach(place -> points.add(scene.seen(place)));
        scene.goal().ifPresent(goal -> points.add(scene.seen(goal)));
        points.addAll(nowAndRegion());
        return points;
    }

    /** The zone, and everything close enough that the zone stays large. */
    private List<Vector2D> nearZone() {
        List<Vector2D> points = new ArrayList<>(zone);
        points.add(scene.seen(scene.allowance().bestAim()));
        addIfNear(points, List.of(Vector2D.ZERO));
        addIfNear(points, nowAndRegion());
        scene.possible().forEach(place -> addIfNear(points, List.of(scene.seen(place))));
        scene.goal().ifPresent(goal -> addIfNear(points, List.of(scene.seen(goal))));
        return points;
    }

    private void addIfNear(List<Vector2D> points, List<Vector2D> others) {
        List<Vector2D> both = new ArrayList<>(points);
        both.addAll(others);
        if (largestSide(both) <= NEAR * largestSide(zone)) {
            points.addAll(others);
        }
    }

    private static double largestSide(List<Vector2D> points) {
        Box extent = MapView.extent(points);
        return Math.max(extent.width(), extent.height());
    }

    private List<Vector2D> nowAndRegion() {
        List<Vector2D> points = new ArrayList<>();
        scene.now().ifPresent(now -> {
            points.add(scene.seen(now.offset()));
            points.addAll(scene.region(now, 2));
        });
        return points;
    }

    private static Box map(double top, double height) {
        return new Box(LEFT, top, WIDTH - MARGIN, top + height);
    }

    private static String times(double ratio) {
        return PlainNumber.of(new BigDecimal(ratio).round(new MathContext(2)).doubleValue());
    }

    private String title() {
        return "The zone in which the axis may point tonight"
                + scene.now()
                        .filter(now -> scene.possible().isEmpty())
                        .map(now -> scene.allowance().contains(now.offset()) ? ": it is inside" : ": it is outside")
                        .orElse("");
    }

    private String description() {
        String edges = ZoneRim.of(scene.allowance()).causes().stream()
                .map(Stretch::words)
                .collect(Collectors.joining("; "));
        return "A map of the sky about the " + scene.poleWord() + " celestial pole, " + scene.rightWord()
                + " to the right, up at the top. The zone's edge: " + edges + ". The best aim is "
                + figures(scene.allowance().bestAim()) + " the pole. "
                + scene.possible().stream()
                        .map(place -> "The axis may point " + figures(place) + " the pole. ")
                        .collect(Collectors.joining())
                + scene.now()
                        .map(now -> "The axis points " + figures(now.offset()) + " the pole.")
                        .orElse("No fix yet.");
    }

    private static String figures(AxisOffset offset) {
        double east = offset.east().arcminutes();
        double up = offset.up().arcminutes();
        return tenths(east) + "′ " + (east >= 0 ? "east" : "west") + " and " + tenths(up) + "′ "
                + (up >= 0 ? "above" : "below");
    }

    private static String tenths(double arcmin) {
        return String.format(Locale.ROOT, "%.1f", Math.abs(arcmin));
    }
}
