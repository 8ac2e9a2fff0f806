package polewright.drawing.mount;

import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.drawing.Tilted;
import polewright.mount.rig.MountKind;
import polewright.sky.place.Site;

/**
 * The home position from the side: ground, stand, wedge at the latitude, mount, tube along the polar axis, and the
 * angles.
 *
 * <p>The elevated pole is always on the right: at a northern site the view is from the east of the mount facing west,
 * at a southern site from the west facing east. The axis is inclined by exactly the latitude; nothing else is to scale.
 */
public final class HomeDrawing {
    private static final int WIDTH = 360;
    private static final int HEIGHT = 530;
    private static final double MARGIN = 8;
    private static final Vector2D CENTRE = new Vector2D(112, 284);
    private static final double ARC = 185;
    private static final double TIP = ARC + 36;
    private static final double SIZE = 14;
    private static final double FIGURE_SIZE = 17;

    private final MountKind kind;
    private final Site site;
    private final Palette palette;
    private final double axisRad;
    private final Svg svg;

    private HomeDrawing(MountKind kind, Site site, Palette palette) {
        this.kind = kind;
        this.site = site;
        this.palette = palette;
        this.axisRad = site.poleAltitude().radians();
        this.svg = new Svg(WIDTH, HEIGHT, title(), description(), palette);
    }

    /** A complete SVG document, which can also be embedded in a page. */
    public static String svg(MountKind kind, Site site, Palette palette) {
        return new HomeDrawing(kind, site, palette).drawn();
    }

    private String drawn() {
        levelAndPlumb();
        ground();
        MountSketch sketch = new MountSketch(svg, palette, CENTRE);
        switch (kind) {
            case FORK_ON_WEDGE -> sketch.forkOnWedge(axisRad);
            case FORK_UPRIGHT -> sketch.forkUpright(site.isNorthern() ? 0 : Math.PI);
            case GERMAN -> sketch.german(axisRad);
            case TRACKER -> sketch.tracker(axisRad);
        }
        axis();
        angles();
        captions();
        return svg.finished();
    }

    private void levelAndPlumb() {
        Look guide = Look.line(palette.guide(), 1.3).dashed("7 5");
        svg.line("level", guide, offset(-CENTRE.getX() + 12, 0), offset(ARC + 5, 0));
        svg.line("plumb", guide, offset(0, MountSketch.groundY(CENTRE) - CENTRE.getY()), offset(0, -ARC - 5));
        svg.text(
                new Vector2D(CENTRE.getX() + 6, MountSketch.groundY(CENTRE) - 7),
                Anchor.START,
                SIZE,
                palette.text(),
                "plumb");
        if (kind.hasPolarAxis()) {
            svg.text(new Vector2D(MARGIN + 4, CENTRE.getY() + 17), Anchor.START, SIZE, palette.text(), "level");
        } else {
            svg.text(offset(ARC - 52, 18), Anchor.START, SIZE, palette.text(), "level");
        }
    }

    private void ground() {
        double y = MountSketch.groundY(CENTRE);
        svg.line("ground", Look.line(palette.ink(), 2), new Vector2D(12, y), new Vector2D(WIDTH - 12, y));
        Look hatch = Look.line(palette.guide(), 1);
        for (double x = 20; x <= WIDTH - 12; x += 12) {
            svg.line(hatch, new Vector2D(x, y + 1), new Vector2D(x - 8, y + 9));
        }
        double arrowY = y + 29;
        String left = "true " + away();
        String right = "true " + toward();
        svg.text(new Vector2D(MARGIN + 4, arrowY + 5), Anchor.START, SIZE, palette.text(), left);
        svg.text(new Vector2D(WIDTH - MARGIN - 4, arrowY + 5), Anchor.END, SIZE, palette.text(), right);
        double gap = Lettering.width(right, SIZE) + MARGIN + 12;
        arrow("", palette.ink(), new Vector2D(WIDTH / 2.0, arrowY), new Vector2D(WIDTH - gap, arrowY), "");
        arrow("", palette.ink(), new Vector2D(WIDTH / 2.0, arrowY), new Vector2D(gap, arrowY), "");
    }

    private void axis() {
        Tilted axis = new Tilted(CENTRE, axisRad);
        if (kind.hasPolarAxis()) {
            arrow("polar-axis", palette.axis(), axis.at(-40, 0), axis.at(TIP, 0), "14 4 3 4");
        } else {
            arrow("pole-direction", palette.axis(), axis.at(96, 0), axis.at(TIP, 0), "3 5");
        }
        Vector2D tip = axis.at(TIP, 0);
        List<String> words = List.of(toward(), "celestial", "pole");
        double widest = Lettering.width("celestial", SIZE);
        boolean fitsBeside = tip.getX() + 9 + widest <= WIDTH - MARGIN;
        double x = fitsBeside ? tip.getX() + 9 : WIDTH - MARGIN;
        double lastY = fitsBeside ? tip.getY() + 26 : tip.getY() - 12;
        for (int i = 0; i < words.size(); i++) {
            double y = lastY - 16 * (words.size() - 1 - i);
            svg.text(new Vector2D(x, y), fitsBeside ? Anchor.START : Anchor.END, SIZE, palette.axis(), words.get(i));
        }
    }

    /** Each angle's value is outside its arc, moved off the axis if the angle is too narrow for it. */
    private void angles() {
        Look arc = Look.line(palette.axis(), 1.4);
        String latitude = figure(tenths());
        svg.arc(arc, CENTRE, ARC, 0, axisRad);
        Vector2D middle = outsideArc(axisRad / 2, latitude);
        double leftEdge = middle.getX() - Lettering.width(latitude, FIGURE_SIZE) / 2 - CENTRE.getX();
        double lowest = CENTRE.getY() - leftEdge * Math.tan(axisRad) + 14;
        figureAt(new Vector2D(middle.getX(), Math.max(middle.getY(), Math.min(lowest, CENTRE.getY() + 14))), latitude);
        if (kind.hasPolarAxis()) {
            String fromPlumb = figure(900 - tenths());
            svg.arc(arc, CENTRE, ARC, axisRad, Math.PI / 2);
            Vector2D between = outsideArc((axisRad + Math.PI / 2) / 2, fromPlumb);
            double halfWidth = Lettering.width(fromPlumb, FIGURE_SIZE) / 2;
            double rightmost = CENTRE.getX() + (CENTRE.getY() - between.getY()) / Math.tan(axisRad) - halfWidth - 4;
            figureAt(new Vector2D(Math.min(between.getX(), rightmost), between.getY()), fromPlumb);
        }
    }

    private static Vector2D outsideArc(double angleRad, String figure) {
        double halfWidth = Lettering.width(figure, FIGURE_SIZE) / 2;
        return Svg.around(CENTRE, ARC + 15 + (halfWidth - 8) * Math.cos(angleRad), angleRad);
    }

    private void captions() {
        double y = HEIGHT - 36;
        svg.text(new Vector2D(MARGIN + 4, 24), Anchor.START, 16, palette.text(), heading());
        svg.text(new Vector2D(MARGIN + 4, y), Anchor.START, SIZE, palette.text(), summary());
        svg.text(new Vector2D(MARGIN + 4, y + 20), Anchor.START, SIZE, palette.text(), standpoint() + ".");
    }

    private void figureAt(Vector2D middle, String figure) {
        svg.text(middle.add(new Vector2D(0, 6)), Anchor.MIDDLE, FIGURE_SIZE, palette.axis(), figure);
    }

    private void arrow(String name, String colour, Vector2D from, Vector2D to, String dash) {
        svg.line(name, new Look("none", colour, 1.8, dash), from, to);
        double angle = Math.atan2(from.getY() - to.getY(), to.getX() - from.getX());
        Tilted head = new Tilted(to, angle);
        svg.polygon(Look.filled(colour, colour, 1), head.at(2, 0), head.at(-9, 4), head.at(-9, -4));
    }

    private String heading() {
        return switch (kind) {
            case FORK_ON_WEDGE -> "Fork on a wedge, home";
            case FORK_UPRIGHT -> "Fork set upright, home";
            case GERMAN -> "German equatorial, home";
            case TRACKER -> "Small tracker, home";
        };
    }

    private String title() {
        return "Home position: " + kind.words() + ", latitude " + figure(tenths()) + " " + toward();
    }

    private String description() {
        String seen = "Side view. " + standpoint() + ", the " + poleName() + " to the right. ";
        return switch (kind) {
            case FORK_ON_WEDGE ->
                seen + "On level ground a tripod, on it a wedge tilted so that the polar axis rises " + figure(tenths())
                        + " above level. The fork's arms and the tube between them lie along the axis.";
            case FORK_UPRIGHT ->
                seen + "The fork is vertical on a level tripod. The tube is level and faces true"
                        + " north. The pole is " + figure(tenths()) + " above level.";
            case GERMAN ->
                seen + "On a pier the mount's polar axis rises " + figure(tenths()) + " above level. The"
                        + " counterweight shaft is at its lowest; above the mount the tube lies parallel to the axis.";
            case TRACKER ->
                seen + "On a tripod a small wedge tilts the tracker so that its axis rises " + figure(tenths())
                        + " above level. The camera points elsewhere; the polar sight's line is clear.";
        };
    }

    private String summary() {
        return kind.hasPolarAxis()
                ? "Axis " + figure(tenths()) + " above level, " + figure(900 - tenths()) + " from plumb."
                : "Fork plumb. Tube level, to true north.";
    }

    private String standpoint() {
        return site.isNorthern() ? "Seen from the east, facing west" : "Seen from the west, facing east";
    }

    private String poleName() {
        return toward() + " celestial pole";
    }

    private String toward() {
        return site.isNorthern() ? "north" : "south";
    }

    private String away() {
        return site.isNorthern() ? "south" : "north";
    }

    /** Latitude in tenths of a degree, rounded once so that the two angles shown add up to 90°. */
    private long tenths() {
        return Math.round(site.poleAltitude().degrees() * 10);
    }

    private static String figure(long tenths) {
        return String.format(Locale.ROOT, "%d.%d°", tenths / 10, tenths % 10);
    }

    private static Vector2D offset(double right, double down) {
        return CENTRE.add(new Vector2D(right, down));
    }
}
