package polewright.drawing.mount;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.Sheet;
import polewright.drawing.Strokes;
import polewright.drawing.Svg.Look;
import polewright.drawing.Tilted;
import polewright.mount.rig.ForkClearance;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.sky.PlainNumber;

/**
 * The meaning of each length of a rig, with the rig's own value: one picture for each screw, and one for the fork, with
 * dimension lines as on an engineering drawing. The turnbuckle's triangle and the tube are to scale, the bodies are
 * not.
 */
public final class RigLengthsDrawing {
    private static final int HEIGHT = 322;
    private static final double LEAN_RAD = Math.toRadians(140);
    private static final double LONGEST = 170;
    private static final double APART = 18;
    private static final int LETTERS = 22;
    // An unmeasured fork is drawn in typical proportions.
    private static final ForkClearance COMMON = new ForkClearance(310, 300, 290, 45, 115);

    private final Sheet paper;
    private final List<String> labels;

    private RigLengthsDrawing(String title, List<String> labels, Palette palette) {
        this.labels = labels;
        this.paper = new Sheet(HEIGHT, title, labels.stream().collect(Collectors.joining("; ", "", ".")), palette);
    }

    /** Each a complete SVG document, in the order in which they are measured. */
    public static List<String> svgs(Rig rig, Palette palette) {
        List<String> pictures = new ArrayList<>();
        if (rig.kind().hasPolarAxis()) {
            pictures.add(altitude(rig.altitudeScrew(), palette));
            pictures.add(azimuth(rig.azimuthScrew(), palette));
        }
        if (rig.kind() == MountKind.FORK_ON_WEDGE || rig.kind() == MountKind.FORK_UPRIGHT) {
            pictures.add(fork(rig, palette));
        }
        return pictures;
    }

    private static String altitude(Screw screw, Palette palette) {
        RigLengthsDrawing drawing =
                new RigLengthsDrawing("Altitude screw, from the side", labels(screw.geometry()), palette);
        if (screw.geometry() instanceof ScrewGeometry.Turnbuckle turnbuckle) {
            drawing.turnbuckle(turnbuckle);
        } else {
            drawing.pushedFromBelow();
        }
        return drawing.paper.finished();
    }

    private static String azimuth(Screw screw, Palette palette) {
        RigLengthsDrawing drawing =
                new RigLengthsDrawing("Azimuth screw, from above", labels(screw.geometry()), palette);
        drawing.pushedSideways();
        return drawing.paper.finished();
    }

    private static List<String> labels(ScrewGeometry geometry) {
        if (geometry instanceof ScrewGeometry.PushScrew push) {
            return List.of(
                    "arm, pivot to the screw's line: " + mm(push.armMm()),
                    "thread pitch: " + mm(push.threadPitchMm()) + " a turn");
        }
        if (geometry instanceof ScrewGeometry.Turnbuckle turnbuckle) {
            return List.of(
                    "hinge to lower pivot: " + mm(turnbuckle.hingeToLowerMm()),
                    "hinge to upper pivot: " + mm(turnbuckle.hingeToUpperMm()),
                    "between the pivots, the axis "
                            + Sheet.degrees(turnbuckle.referenceAltitude()) + " high: "
                            + mm(turnbuckle.lengthAtReferenceMm()),
                    "lead of the threads: " + mm(turnbuckle.leadPerTurnMm()) + " a turn");
        }
        return List.of("one turn moves the axis "
                + String.format(
                        Locale.ROOT,
                        "%.2f°",
                        ((ScrewGeometry.DegreesPerTurn) geometry).perTurn().degrees()));
    }

    private void pushedFromBelow() {
        Vector2D hinge = new Vector2D(250, 200);
        Tilted plate = new Tilted(hinge, LEAN_RAD);
        double arm = 150;
        Vector2D foot = new Vector2D(hinge.getX() - arm, hinge.getY() + 8);
        Vector2D top = new Vector2D(foot.getX(), hinge.getY() - arm * Math.tan(Math.PI - LEAN_RAD));
        base(hinge);
        paper.line("plate", Look.line(paper.palette().ink(), 7), hinge, plate.at(215, 0));
        screw(foot, top);
        paper.svg().circle(paper.metal(), hinge, 6);
        paper.name(hinge, "pivot (hinge)");
        if (labels.size() > 1) {
            dimension(
                    new Vector2D(foot.getX(), hinge.getY() + 34), new Vector2D(hinge.getX(), hinge.getY() + 34), 30, 0);
            foot(1);
        } else {
            foot(0);
        }
    }

    private void pushedSideways() {
        Vector2D pivot = new Vector2D(180, 232);
        Vector2D end = pivot.subtract(new Vector2D(0, 165));
        paper.svg().polygon(paper.metal(), new Tilted(pivot, Math.PI / 2).box(-22, 110, -40, 40));
        paper.keepOff(Box.about(pivot.subtract(new Vector2D(0, 44)), 80, 132));
        paper.line("arm", Look.line(paper.palette().ink(), 7), pivot, end);
        screw(end.add(new Vector2D(92, 8)), end.add(new Vector2D(4, 8)));
        paper.svg().circle(paper.metal(), pivot, 7);
        paper.name(pivot.add(new Vector2D(40, 6)), "pivot");
        paper.letters(new Vector2D(180, 284), 14, paper.palette().text(), "you stand here");
        if (labels.size() > 1) {
            dimension(
                    new Vector2D(pivot.getX() - 62, end.getY() + 8),
                    new Vector2D(pivot.getX() - 62, pivot.getY()),
                    56,
                    0);
            foot(1);
        } else {
            foot(0);
        }
    }

    private void turnbuckle(ScrewGeometry.Turnbuckle lengths) {
        double a = lengths.hingeToLowerMm();
        double b = lengths.hingeToUpperMm();
        double c = lengths.lengthAtReferenceMm();
        double scale = LONGEST / Math.max(a, b);
        double opening = Math.acos((a * a + b * b - c * c) / (2 * a * b));
        Vector2D hinge = new Vector2D(262, 226);
        Vector2D lower = hinge.subtract(new Vector2D(a * scale, 0));
        Tilted plate = new Tilted(hinge, Math.PI - opening);
        Vector2D upper = plate.at(b * scale, 0);
        base(hinge);
        paper.line("plate", Look.line(paper.palette().ink(), 7), hinge, plate.at(b * scale + 16, 0));
        screw(lower, upper);
        for (Vector2D pivot : List.of(hinge, lower, upper)) {
            paper.svg().circle(paper.metal(), pivot, 6);
            paper.keepOff(Box.about(pivot, 20, 20));
        }
        dimension(lower.add(new Vector2D(0, 24)), hinge.add(new Vector2D(0, 24)), 20, 0);
        Vector2D aside = plate.at(0, -22).subtract(hinge);
        dimension(hinge.add(aside), upper.add(aside), 18, 1);
        Vector2D along = upper.subtract(lower).normalize();
        Vector2D out = new Vector2D(along.getY(), -along.getX()).scalarMultiply(24);
        dimension(lower.add(out), upper.add(out), 20, 2);
        foot(3);
    }

    private static String fork(Rig rig, Palette palette) {
        boolean isMeasured = rig.travel().fork().isPresent();
        ForkClearance fork = rig.travel().fork().orElse(COMMON);
        List<String> labels = List.of(
                "depth of the arms: " + mm(fork.armDepthMm(), isMeasured),
                "behind: " + mm(fork.behindMm(), isMeasured),
                "ahead: " + mm(fork.aheadMm(), isMeasured),
                "half width behind: " + mm(fork.backRadiusMm(), isMeasured),
                "half width ahead: " + mm(fork.frontRadiusMm(), isMeasured));
        RigLengthsDrawing drawing = new RigLengthsDrawing(
                isMeasured ? "Fork and tube" : "Fork and tube: not measured yet", labels, palette);
        drawing.fork(fork);
        return drawing.paper.finished();
    }

    private void fork(ForkClearance fork) {
        double scale = Math.min(230 / (fork.behindMm() + fork.aheadMm()), 130 / fork.armDepthMm());
        double across = (fork.behindMm() - fork.aheadMm()) / 2 * scale;
        Vector2D declination = new Vector2D(180 + across, 128);
        Tilted tube = new Tilted(declination, 0);
        double depth = fork.armDepthMm() * scale;
        paper.svg()
                .polygon(
                        Look.filled(paper.palette().glass(), paper.palette().ink(), 1.6),
                        tube.at(-fork.behindMm() * scale, fork.backRadiusMm() * scale),
                        tube.at(-fork.behindMm() * scale / 3, fork.backRadiusMm() * scale),
                        tube.at(-fork.behindMm() * scale / 3, fork.frontRadiusMm() * scale),
                        tube.at(fork.aheadMm() * scale, fork.frontRadiusMm() * scale),
                        tube.at(fork.aheadMm() * scale, -fork.frontRadiusMm() * scale),
                        tube.at(-fork.behindMm() * scale / 3, -fork.frontRadiusMm() * scale),
                        tube.at(-fork.behindMm() * scale / 3, -fork.backRadiusMm() * scale),
                        tube.at(-fork.behindMm() * scale, -fork.backRadiusMm() * scale));
        paper.svg().polygon(paper.metal(), tube.box(-13, 13, -depth, 16));
        paper.svg().polygon(paper.metal(), tube.box(-56, 56, -depth - 14, -depth));
        paper.svg().circle(paper.metal(), declination, 6);
        paper.keepOff(Box.about(declination, 26, 2 * fork.frontRadiusMm() * scale));
        double below = depth + 36;
        dimension(tube.at(30, 0), tube.at(30, -depth), 24, 0);
        dimension(tube.at(-fork.behindMm() * scale, -below), tube.at(0, -below), 20, 1);
        dimension(tube.at(0, -below), tube.at(fork.aheadMm() * scale, -below), 20, 2);
        dimension(
                tube.at(-fork.behindMm() * scale - 12, 0),
                tube.at(-fork.behindMm() * scale - 12, fork.backRadiusMm() * scale),
                10,
                3);
        dimension(
                tube.at(fork.aheadMm() * scale + 12, 0),
                tube.at(fork.aheadMm() * scale + 12, fork.frontRadiusMm() * scale),
                10,
                4);
    }

    private void base(Vector2D hinge) {
        paper.svg().polygon(paper.metal(), new Tilted(hinge, 0).box(-208, 46, -20, -8));
        paper.keepOff(Box.about(hinge.add(new Vector2D(-81, 14)), 254, 12));
    }

    /** A threaded rod with its head at the start. */
    private void screw(Vector2D from, Vector2D to) {
        Tilted rod = Tilted.along(to, from);
        double length = from.distance(to);
        paper.line("screw", Look.line(paper.palette().axis(), 4), from, to);
        Strokes.sampled(List.of(from, to), 8).forEach(on -> paper.keepOff(Box.about(on, 10, 10)));
        for (double at = 14; at < length - 6; at += 7) {
            Vector2D on = from.add(at / length, to.subtract(from));
            Tilted thread = new Tilted(on, rod.angleRad());
            paper.svg().line(Look.line(paper.palette().axis(), 1.6), thread.at(-2, 5), thread.at(2, -5));
        }
        paper.svg().polygon(Look.filled(paper.palette().metal(), paper.palette().axis(), 2), rod.box(-2, 10, -10, 10));
    }

    /** A length between two arrowheads, with extension lines to what it measures. */
    private void dimension(Vector2D from, Vector2D to, double reach, int which) {
        Look look = Look.line(paper.palette().axis(), 1.4);
        Tilted line = Tilted.along(from, to);
        paper.line("dimension", look, from, to);
        if (from.distance(to) > APART) {
            paper.head(look.stroke(), to, from);
            paper.head(look.stroke(), from, to);
        }
        for (Vector2D end : List.of(from, to)) {
            Tilted edge = new Tilted(end, line.angleRad());
            paper.svg().line(Look.line(paper.palette().guide(), 1), edge.at(0, -reach / 2), edge.at(0, reach / 2));
        }
        name(from.add(0.5, to.subtract(from)), which);
    }

    /** The effect of a turn, below the picture. */
    private void foot(int which) {
        paper.letters(new Vector2D(180, HEIGHT - 14), 14, paper.palette().axis(), labels.get(which));
    }

    /** The value on a line of its own. */
    private void name(Vector2D on, int which) {
        String words = labels.get(which);
        int colon = words.indexOf(": ");
        String head = colon < 0 ? words : words.substring(0, colon + 1);
        String figure = colon < 0 ? "" : "\n" + words.substring(colon + 2);
        paper.figure(on, String.join("\n", Lettering.wrapped(head, LETTERS, 3)) + figure);
    }

    private static String mm(double millimetres, boolean isMeasured) {
        return isMeasured ? mm(millimetres) : "?";
    }

    private static String mm(double millimetres) {
        return PlainNumber.of(millimetres) + " mm";
    }
}
