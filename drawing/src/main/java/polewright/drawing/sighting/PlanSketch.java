package polewright.drawing.sighting;

import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.sighting.BodyBearing;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Sheet;
import polewright.drawing.Svg.Look;
import polewright.drawing.Tilted;
import polewright.sky.angle.Angle;

/** Sketches from above: the observer is behind the mount looking along the axis, which runs up the paper. */
final class PlanSketch {
    private static final int HEIGHT = 372;
    private static final Vector2D PIVOT = new Vector2D(180, 200);
    private static final double DIAL = 74;
    private static final double FAR = 138;
    private static final double TICK_DEG = 30;

    private final Sheet paper;

    private PlanSketch(String title, String description, Palette palette) {
        paper = new Sheet(HEIGHT, title, description, palette);
    }

    static String svg(SightingSketch.Compass compass, Palette palette) {
        String pole = compass.isNorthern() ? "north" : "south";
        Angle trueAzimuth = compass.bearing().plus(compass.declination());
        Angle fromPole = (compass.isNorthern() ? trueAzimuth : trueAzimuth.minus(Angle.HALF_TURN)).wrappedSigned();
        String bearing = Sheet.degrees(compass.bearing().wrappedPositive());
        String declination = Sheet.degrees(compass.declination().abs())
                + (compass.declination().radians() < 0 ? " west" : " east");
        String off = Math.abs(fromPole.degrees()) < 0.05
                ? "straight at " + pole
                : Sheet.degrees(fromPole.abs()) + (fromPole.radians() > 0 ? " right" : " left") + " of " + pole;
        PlanSketch sketch = new PlanSketch(
                "Compass, from above",
                "From above. You stand behind the mount and sight along the axis toward the " + pole
                        + " celestial pole. The bearing, " + bearing
                        + ", counts clockwise from the needle's north end to the axis. The needle points "
                        + declination + " of true north. So the axis points " + off + ".",
                palette);
        sketch.compass(compass, bearing, declination);
        sketch.paper.letters(new Vector2D(180, HEIGHT - 12), 14, palette.axis(), "the axis points " + off);
        return sketch.paper.finished();
    }

    private void compass(SightingSketch.Compass compass, String bearing, String declination) {
        Palette palette = paper.palette();
        Angle needle = compass.bearing().negated();
        Angle north = needle.minus(compass.declination());
        paper.svg().circle(Look.filled(palette.glass(), palette.ink(), 1.6), PIVOT, DIAL);
        for (double tick = 0; tick < 360; tick += TICK_DEG) {
            Angle at = needle.plus(Angle.ofDegrees(tick));
            paper.svg()
                    .line(
                            Look.line(palette.ink(), 1.2),
                            Sheet.clockwise(PIVOT, DIAL, at),
                            Sheet.clockwise(PIVOT, DIAL - 7, at));
        }
        axis();
        Vector2D trueNorth = Sheet.clockwise(PIVOT, FAR - 14, north);
        paper.line("true-north", paper.faint(), PIVOT, trueNorth);
        paper.name(trueNorth, "true north");
        if (!compass.isNorthern()) {
            Vector2D trueSouth = Sheet.clockwise(PIVOT, FAR - 14, north.plus(Angle.HALF_TURN));
            paper.line("true-south", paper.faint(), PIVOT, trueSouth);
            paper.name(trueSouth, "true south");
        }
        needle(needle);
        paper.sweep(
                "bearing",
                paper.measured(),
                PIVOT,
                52,
                needle,
                compass.bearing().wrappedPositive());
        paper.figure(
                Sheet.clockwise(
                        PIVOT,
                        52,
                        needle.plus(compass.bearing().wrappedPositive().times(0.5))),
                "bearing " + bearing);
        paper.sweep("declination", Look.line(palette.ink(), 2), PIVOT, 96, north, compass.declination());
        paper.name(
                Sheet.clockwise(PIVOT, 96, north.plus(compass.declination().times(0.5))), "declination " + declination);
    }

    private void needle(Angle toward) {
        Palette palette = paper.palette();
        Vector2D tip = Sheet.clockwise(PIVOT, DIAL - 8, toward);
        Vector2D tail = Sheet.clockwise(PIVOT, DIAL - 8, toward.plus(Angle.HALF_TURN));
        Tilted along = Tilted.along(tail, PIVOT);
        paper.line("needle", Look.line(palette.ink(), 1), tail, tip);
        paper.svg().polygon(Look.filled(palette.text(), palette.ink(), 1), tip, along.at(0, 6), along.at(0, -6));
        paper.svg().polygon(Look.filled(palette.background(), palette.ink(), 1), tail, along.at(0, 6), along.at(0, -6));
        paper.name(Sheet.clockwise(PIVOT, DIAL - 8, toward), "needle, north end");
    }

    static String svg(SightingSketch.FromLine from, Palette palette) {
        boolean isShadow = from.line() == BodyBearing.Line.SHADOW;
        Angle clockwise = from.clockwise().wrappedSigned();
        String angle = Sheet.degrees(clockwise);
        String sense = clockwise.radians() < 0 ? "anticlockwise: negative" : "clockwise";
        String what = isShadow ? "the shadow of the plumb line" : "the line toward " + from.body();
        PlanSketch sketch = new PlanSketch(
                isShadow ? "Shadow, from above" : "Bearing of a star, from above",
                "From above. You stand behind the mount and look along the axis. The angle, " + angle + ", goes from "
                        + what + " to the axis, " + sense + "."
                        + (isShadow
                                ? " The shadow falls away from " + from.body()
                                        + "; look at the ground, never at the Sun."
                                : ""),
                palette);
        sketch.fromLine(from, isShadow, clockwise, angle);
        sketch.paper.letters(
                new Vector2D(180, HEIGHT - 12),
                14,
                palette.axis(),
                (isShadow ? "shadow" : "star") + " to axis: " + sense);
        return sketch.paper.finished();
    }

    private void fromLine(SightingSketch.FromLine from, boolean isShadow, Angle clockwise, String angle) {
        Palette palette = paper.palette();
        axis();
        Angle line = clockwise.negated();
        Vector2D end = Sheet.clockwise(PIVOT, FAR - 14, line);
        if (isShadow) {
            paper.line("from", Look.line(palette.guide(), 7), PIVOT, end);
            paper.name(end, "shadow of the plumb line");
            Vector2D body = Sheet.clockwise(PIVOT, FAR - 20, line.plus(Angle.HALF_TURN));
            paper.line("", paper.faint(), PIVOT, body);
            paper.svg().circle(Look.filled(palette.metal(), palette.ink(), 2), body, 9);
            paper.keepOff(Box.about(body, 18, 18));
            paper.name(body, from.body() + (from.body().equals("the Sun") ? ": never look" : ""));
        } else {
            paper.line("from", Look.line(palette.ink(), 2).dashed("9 5"), PIVOT, end);
            paper.star(end, 5);
            paper.name(end, from.body());
        }
        paper.svg().circle(Look.filled(palette.background(), palette.ink(), 2), PIVOT, 5);
        paper.name(PIVOT, isShadow ? "foot of the plumb line" : "the mount");
        paper.sweep("angle", paper.measured(), PIVOT, 78, line, clockwise);
        paper.figure(Sheet.clockwise(PIVOT, 78, line.plus(clockwise.times(0.5))), angle);
    }

    /** The axis up the paper, the fork's base across it, and the observer's position. */
    private void axis() {
        Vector2D top = PIVOT.subtract(new Vector2D(0, FAR));
        Vector2D foot = PIVOT.add(new Vector2D(0, FAR - 44));
        paper.arrow("axis", Look.line(paper.palette().axis(), 4), foot, top);
        paper.name(top, "axis");
        paper.letters(new Vector2D(180, 334), 14, paper.palette().text(), "you stand here");
        paper.shun(List.of(foot));
    }
}
