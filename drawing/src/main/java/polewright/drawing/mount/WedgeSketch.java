package polewright.drawing.mount;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Palette;
import polewright.drawing.Strokes;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.drawing.Tilted;
import polewright.mount.rig.MountKind;
import polewright.sky.place.Site;

/** A wedge or mount head in its two views, each 360 wide and 200 high, with its screw. */
final class WedgeSketch {
    private static final double MARGIN = 12;
    private static final double SIZE = 14;
    private static final double PLATE = 96;
    private static final double SEAT = 52;
    private static final double AXIS = 126;

    private final Svg svg;
    private final Palette palette;
    private final MountKind kind;
    private final Site site;
    private final Look screw;
    private final Look metal;
    private final Look glass;

    /** @param screw style of the view's screw */
    WedgeSketch(Svg svg, Palette palette, MountKind kind, Site site, Look screw) {
        this.svg = svg;
        this.palette = palette;
        this.kind = kind;
        this.site = site;
        this.screw = screw;
        this.metal = Look.filled(palette.metal(), palette.ink(), 1.6);
        this.glass = Look.filled(palette.glass(), palette.ink(), 1.6);
    }

    /** The movement of the axis for a turn, in a few words. */
    static String movementWords(ScrewToTurn turn, Site site) {
        if (turn.isTest()) {
            return turn.isAzimuth() ? "left or right" : "up or down";
        }
        if (!turn.isAzimuth()) {
            return turn.movesForward() ? "up" : "down";
        }
        return turn.movesForward()
                ? "right (" + (site.isNorthern() ? "east" : "west") + ")"
                : "left (" + (site.isNorthern() ? "west" : "east") + ")";
    }

    /** The pole on the right; the plate hinged at its low end and supported by the screw. */
    void fromSide(double top, Optional<ScrewToTurn> turn) {
        Vector2D hinge = new Vector2D(186, top + 168);
        double axisRad = site.poleAltitude().radians();
        Tilted plate = new Tilted(hinge, axisRad + Math.PI / 2);
        Tilted axis = new Tilted(plate.at(SEAT, 0), axisRad);
        Vector2D base = new Vector2D(hinge.getX() - 98, hinge.getY() + 6);
        svg.open("altitude-view");
        svg.polygon(metal, new Tilted(hinge, 0).box(-118, 40, -14, -6));
        svg.line("plate", Look.line(palette.ink(), 7), hinge, plate.at(PLATE + 6, 0));
        if (kind == MountKind.FORK_ON_WEDGE) {
            forkFromItsSide(axis);
        } else {
            head(axis);
        }
        svg.circle(metal, hinge, 5);
        screw(base, plate.at(PLATE, 0));
        svg.polygon(screw, new Tilted(base, 0).box(-12, 12, -22, -12));
        svg.close();
        svg.line("side-axis", Look.line(palette.axis(), 1.8).dashed("14 4 3 4"), axis.at(-24, 0), axis.at(AXIS, 0));
        turn.ifPresent(t -> swing("altitude-way", axis.origin(), AXIS - 8, axisRad, t.movesForward()));
        words(new Vector2D(MARGIN, top + 14), Anchor.START, "From the " + (site.isNorthern() ? "east" : "west"));
        turn.ifPresent(t ->
                words(new Vector2D(360 - MARGIN, top + 14), Anchor.END, "the axis goes " + movementWords(t, site)));
        words(new Vector2D(360 - MARGIN, top + 192), Anchor.END, site.isNorthern() ? "north" : "south");
        words(new Vector2D(MARGIN, top + 192), Anchor.START, site.isNorthern() ? "south" : "north");
    }

    /** The pole at the top; a fixed lug of the base, and the screw that pushes the wedge around it. */
    void fromAbove(double top, Optional<ScrewToTurn> turn) {
        Vector2D pivot = new Vector2D(180, top + 112);
        Tilted away = new Tilted(pivot, Math.PI / 2);
        svg.open("azimuth-view");
        svg.polygon(glass, away.box(-66, -40, -13, 13));
        svg.polygon(metal, away.box(-38, 34, -44, 44));
        svg.polygon(metal, away.box(-58, -38, 20, 30));
        svg.polygon(metal, away.box(-58, -38, -30, -20));
        if (kind == MountKind.FORK_ON_WEDGE) {
            forkFromAbove(away.movedTo(-6, 0));
        } else {
            head(away.movedTo(-6, 0));
        }
        screw(away.at(-50, -56), away.at(-50, -13));
        svg.polygon(screw, away.box(-62, -38, -66, -56));
        svg.circle(metal, pivot, 5);
        svg.close();
        double reach = 92;
        svg.line("top-axis", Look.line(palette.axis(), 1.8).dashed("14 4 3 4"), away.at(-24, 0), away.at(reach + 6, 0));
        turn.ifPresent(t -> swing("azimuth-way", pivot, reach, Math.PI / 2, !t.movesForward()));
        words(new Vector2D(MARGIN, top + 14), Anchor.START, "From above");
        turn.ifPresent(t -> {
            words(new Vector2D(360 - MARGIN, top + 14), Anchor.END, "the axis goes");
            words(new Vector2D(360 - MARGIN, top + 30), Anchor.END, movementWords(t, site));
        });
        words(new Vector2D(MARGIN, top + 117), Anchor.START, site.isNorthern() ? "west" : "east");
        words(new Vector2D(360 - MARGIN, top + 117), Anchor.END, site.isNorthern() ? "east" : "west");
        words(new Vector2D(180, top + 196), Anchor.MIDDLE, "you stand here");
    }

    /** As in the drawing of the home position: the near arm hides the far one, the tube is between them. */
    private void forkFromItsSide(Tilted axis) {
        svg.polygon(metal, axis.box(4, 18, -26, 26));
        svg.polygon(glass, axis.box(44, 112, -15, 15));
        svg.polygon(metal, axis.box(18, 92, -8, 8));
        svg.circle(glass, axis.at(82, 0), 5);
    }

    private void forkFromAbove(Tilted axis) {
        svg.polygon(glass, axis.box(4, 20, -34, 34));
        svg.polygon(glass, axis.box(20, 82, -34, -22));
        svg.polygon(glass, axis.box(20, 82, 22, 34));
    }

    private void head(Tilted axis) {
        svg.polygon(glass, axis.box(4, 64, -18, 18));
        svg.polygon(glass, axis.box(64, 74, -12, 12));
    }

    private void screw(Vector2D from, Vector2D to) {
        svg.line("screw", new Look("none", screw.stroke(), screw.width(), ""), from, to);
    }

    /** An arrow from the axis's end, about its foot, in the direction of movement. */
    private void swing(String name, Vector2D foot, double radius, double axisRad, boolean anticlockwise) {
        double sweep = Math.toRadians(anticlockwise ? 22 : -22);
        svg.open(name);
        svg.polyline(Look.line(palette.axis(), 3), Strokes.arc(foot, radius, axisRad, sweep));
        svg.arcHead(palette.axis(), foot, radius, axisRad + sweep, anticlockwise);
        svg.close();
    }

    private void words(Vector2D at, Anchor anchor, String words) {
        svg.text(at, anchor, SIZE, palette.text(), words);
    }
}
