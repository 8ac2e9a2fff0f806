package polewright.drawing.mount;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.drawing.Tilted;

/**
 * The four kinds of mount in side view, with the pole on the right.
 *
 * <p>Dimensions are chosen so that nothing collides at any tilt from 0° to 90°: everything that rotates with the axis
 * stays above the base when level, and clear of the stand when upright.
 */
final class MountSketch {
    /** Everything that rotates with the axis stays within this distance of its centre. */
    static final double REACH = 172;

    /** CSS class of the group of parts that do not tilt with the wedge. */
    static final String STAND = "stand";
    /** CSS class of the groups of parts that tilt with the axis. */
    static final String TURNING = "turning";

    private static final double GROUND_BELOW = 150;
    private static final double BASE_BELOW = 40;
    private static final double ARM_BEARING = 88;
    private static final double LABEL_SIZE = 14;

    private final Svg svg;
    private final Palette palette;
    private final Vector2D centre;
    private final Look metal;
    private final Look glass;
    private final Look leg;
    private final Look thin;

    /** @param centre where the axis crosses the tilt hinge or, on an upright fork, the altitude bearing */
    MountSketch(Svg svg, Palette palette, Vector2D centre) {
        this.svg = svg;
        this.palette = palette;
        this.centre = centre;
        this.metal = Look.filled(palette.metal(), palette.ink(), 1.6);
        this.glass = Look.filled(palette.glass(), palette.ink(), 1.6);
        this.leg = Look.line(palette.ink(), 4.5);
        this.thin = Look.line(palette.ink(), 1);
    }

    static double groundY(Vector2D centre) {
        return centre.getY() + GROUND_BELOW;
    }

    void forkOnWedge(double axisRad) {
        Tilted axis = new Tilted(centre, axisRad);
        wedgeOnTripod(axis);
        svg.open(TURNING);
        fork(axis, axis.movedTo(ARM_BEARING, 0));
        svg.close();
        besideAxis("fork", axis, 60, -9, -62);
        besideAxis("tube", axis, 122, -17, -54);
    }

    /** @param tubeRad 0 with the tube to the right, π to the left */
    void forkUpright(double tubeRad) {
        Tilted plumb = new Tilted(below(ARM_BEARING), Math.PI / 2);
        svg.open(STAND);
        tripod(ARM_BEARING + 6, 86, 43);
        svg.polygon(metal, new Tilted(below(ARM_BEARING), 0).box(-30, 30, -7, -1));
        svg.close();
        Tilted tube = new Tilted(centre, tubeRad);
        svg.open(TURNING);
        fork(plumb, tube);
        svg.close();
        labelled("fork", offset(9, 50), offset(38, 60), Anchor.START);
        Vector2D onTube = tube.at(54, 0);
        labelled(
                "tube",
                new Vector2D(onTube.getX(), centre.getY() - 19),
                new Vector2D(onTube.getX(), centre.getY() - 44),
                Anchor.MIDDLE);
        labelled("tripod", offset(-19, 122), offset(-44, 124), Anchor.END);
    }

    void german(double axisRad) {
        Tilted axis = new Tilted(centre, axisRad);
        svg.open(STAND);
        svg.line(leg, below(98), offset(90, GROUND_BELOW));
        svg.line(leg, below(98), offset(-45, GROUND_BELOW));
        svg.polygon(metal, offset(-9, 24), offset(9, 24), offset(9, 104), offset(-9, 104));
        svg.close();
        svg.polygon(metal, offset(-17, 26), offset(17, 26), offset(9, -4), offset(-9, -4));
        svg.open(TURNING);
        svg.polygon(metal, axis.box(-18, 52, -12, 12));
        svg.circle(metal, centre, 4);
        svg.polygon(metal, axis.box(59, 65, -88, -18));
        svg.polygon(metal, axis.box(55, 69, -90, -87));
        svg.polygon(metal, axis.box(47, 77, -82, -62));
        svg.polygon(metal, axis.box(51, 73, -20, 25));
        svg.polygon(metal, axis.box(38, 86, 24, 29));
        tube(axis.movedTo(62, 46));
        svg.close();
        besideAxis("tube", axis, 30, 64, 86);
        besideAxis("weight", axis, 62, -84, -106);
        labelled("pier", offset(-9, 70), offset(-14, 74), Anchor.END);
    }

    void tracker(double axisRad) {
        Tilted axis = new Tilted(centre, axisRad);
        wedgeOnTripod(axis);
        svg.line(Look.line(palette.guide(), 1.2).dashed("2 4"), axis.at(44, -28.5), axis.at(REACH, -28.5));
        svg.open(TURNING);
        svg.polygon(metal, axis.box(-4, 42, -32, -25));
        svg.polygon(metal, axis.box(0, 24, -25, 25));
        svg.polygon(metal, axis.box(24, 32, -18, 18));
        svg.polygon(metal, axis.box(32, 44, -4, 4));
        svg.circle(metal, axis.at(46, 0), 8);
        // The camera may point anywhere: drawn well off the axis to show that.
        Tilted camera = axis.movedTo(70, 4).turned(Math.toRadians(50));
        svg.polygon(glass, camera.box(14, 44, -12, 12));
        svg.polygon(glass, camera.box(-12, 14, -20, 20));
        svg.close();
        besideAxis("camera", axis, 34, 0, 60, camera.at(-12, 8));
        besideAxis("polar sight", axis, 62, -25, -64, axis.at(38, -32));
    }

    private void wedgeOnTripod(Tilted axis) {
        svg.open(STAND);
        tripod(BASE_BELOW + 6, 90, 45);
        svg.polygon(metal, new Tilted(below(BASE_BELOW), 0).box(-44, 44, -6, 0));
        svg.close();
        // The altitude screw, from the base to the plate's raised edge.
        svg.line(Look.line(palette.ink(), 2.4), offset(-38, BASE_BELOW), axis.at(-3, 34));
        svg.polygon(metal, offset(-30, BASE_BELOW), offset(30, BASE_BELOW), offset(6, -6), offset(-6, -6));
        svg.open(TURNING);
        svg.polygon(metal, axis.box(-5, 0, -36, 36));
        svg.close();
        svg.circle(metal, centre, 4);
        labelled("wedge", offset(-27, 34), offset(-54, 48), Anchor.END);
        labelled("tripod", offset(-21, 95), offset(-46, 99), Anchor.END);
    }

    /** From the side, one leg points toward the pole and the other two are in line. */
    private void tripod(double apexBelow, double towardPole, double away) {
        svg.line(leg, below(apexBelow), offset(towardPole, GROUND_BELOW));
        svg.line(leg, below(apexBelow), offset(-away, GROUND_BELOW));
        svg.polygon(
                metal,
                offset(-11, apexBelow),
                offset(11, apexBelow),
                offset(6, apexBelow + 14),
                offset(-6, apexBelow + 14));
    }

    /** The near arm hides the far one; the tube is between them. */
    private void fork(Tilted arms, Tilted tube) {
        svg.polygon(metal, arms.box(0, 20, -28, 28));
        tube(tube);
        svg.polygon(metal, arms.box(20, ARM_BEARING + 10, -9, 9));
        svg.circle(glass, arms.at(ARM_BEARING, 0), 6);
    }

    /** A tube about its balance point. */
    private void tube(Tilted tube) {
        svg.polygon(metal, tube.box(-60, -52, -7, 7));
        svg.polygon(glass, tube.box(-52, 74, -17, 17));
        svg.polygon(glass, tube.box(68, 78, -19, 19));
    }

    private void besideAxis(String words, Tilted axis, double along, double edge, double across) {
        besideAxis(words, axis, along, edge, across, axis.at(along, edge));
    }

    /** A label to one side of the leaning body, pushed off the level line if it would lie on it. */
    private void besideAxis(String words, Tilted axis, double along, double edge, double across, Vector2D pointedAt) {
        Vector2D place = axis.at(along, across);
        double away = Math.signum(across - edge);
        double halfWidth = Lettering.width(words, LABEL_SIZE) / 2;
        double x = place.getX() - away * halfWidth * Math.sin(axis.angleRad());
        double y = place.getY();
        if (Math.abs(y - centre.getY()) < 14) {
            y = centre.getY() + 15;
        }
        Vector2D middle = new Vector2D(Math.max(x, halfWidth + 6), y);
        svg.line(thin, pointedAt, middle);
        svg.text(middle.add(new Vector2D(0, 5)), Anchor.MIDDLE, LABEL_SIZE, palette.text(), words);
    }

    private void labelled(String words, Vector2D pointedAt, Vector2D at, Anchor anchor) {
        svg.line(thin, pointedAt, at);
        Vector2D baseline = at.add(new Vector2D(anchor == Anchor.START ? 3 : anchor == Anchor.END ? -3 : 0, 4));
        svg.text(baseline, anchor, LABEL_SIZE, palette.text(), words);
    }

    private Vector2D below(double distance) {
        return offset(0, distance);
    }

    private Vector2D offset(double right, double down) {
        return new Vector2D(centre.getX() + right, centre.getY() + down);
    }
}
