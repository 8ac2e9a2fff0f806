package polewright.drawing.sighting;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Sheet;
import polewright.drawing.Strokes;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Look;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;

/** Sketches of a round field as seen at the eyepiece, surrounded by a clock face. */
final class EyepieceSketch {
    private static final int HEIGHT = 410;
    private static final Vector2D MIDDLE = new Vector2D(180, 206);
    private static final double RADIUS = 134;
    private static final double WITHIN = 112;
    private static final double ROCKED = Math.toRadians(28);
    // Stars other than the measured one: (fraction of the field radius from the centre of rotation, degrees from the
    // right).
    private static final double[][] OTHERS = {{0.28, 200}, {0.5, 75}, {0.66, 305}, {0.8, 170}, {0.9, 20}};
    private static final int MOST_DIVISIONS = 8;
    private static final double LONG = 78;
    private static final double LEAST_SEEN = 14;

    private final Sheet paper;

    private EyepieceSketch(String title, String description, Palette palette) {
        paper = new Sheet(HEIGHT, title, description, palette);
        paper.svg().circle(paper.edge(), MIDDLE, RADIUS);
        paper.shun(Strokes.arc(MIDDLE, RADIUS, 0, 2 * Math.PI));
        for (int hour = 1; hour <= 12; hour++) {
            Angle at = Angle.ofDegrees(30 * hour);
            paper.svg()
                    .line(paper.edge(), Sheet.clockwise(MIDDLE, RADIUS, at), Sheet.clockwise(MIDDLE, RADIUS + 5, at));
            paper.letters(Sheet.clockwise(MIDDLE, RADIUS + 16, at), 14, palette.text(), String.valueOf(hour));
        }
    }

    static String svg(SightingSketch.Still still, Palette palette) {
        String far = Sheet.figure(still.fields()) + " field widths";
        String clock = Sheet.figure(still.toward().hours());
        View view = still.view();
        EyepieceSketch sketch = new EyepieceSketch(
                "Swinging: " + words(view),
                "In the eyepiece, " + words(view) + ". While the tube swings in right ascension, every star draws an"
                        + " arc about"
                        + " the centre of rotation. From there, " + still.star() + " is " + far
                        + " away, toward " + clock + " o'clock. The zenith's side of the field is toward "
                        + Sheet.figure(hours(view.fromSky(new Vector2D(0, 1)))) + " o'clock, east toward "
                        + Sheet.figure(hours(east(still))) + ".",
                palette);
        sketch.still(still, far, clock);
        return sketch.paper.finished();
    }

    private static Vector2D east(SightingSketch.Still still) {
        return still.view().fromSky(new Vector2D(still.isFacingNorth() ? 1 : -1, 0));
    }

    private void still(SightingSketch.Still still, String far, String clock) {
        Palette palette = paper.palette();
        sides(still.view().fromSky(new Vector2D(0, 1)), "zenith", "ground", east(still), "east", "west");
        Vector2D away = Sheet.clockwise(
                        MIDDLE, 2 * RADIUS * still.fields(), still.toward().clockwiseFromTop())
                .subtract(MIDDLE);
        // Both have to be in the field, though not in its middle.
        Vector2D centre = still.fields() <= 0.4 ? MIDDLE : MIDDLE.subtract(away.scalarMultiply(0.5));
        Vector2D star = centre.add(away);
        for (double[] other : OTHERS) {
            rocked(centre, other[0] * RADIUS, Math.toRadians(other[1]), 1.8, 1);
        }
        rocked(centre, away.getNorm(), Math.atan2(-away.getY(), away.getX()), 5, 2);
        paper.line("", paper.measured(), centre.subtract(new Vector2D(9, 0)), centre.add(new Vector2D(9, 0)));
        paper.line("", paper.measured(), centre.subtract(new Vector2D(0, 9)), centre.add(new Vector2D(0, 9)));
        if (away.getNorm() > LEAST_SEEN) {
            paper.arrow(
                    "offset",
                    paper.measured(),
                    centre,
                    star.subtract(away.normalize().scalarMultiply(8)));
        }
        paper.name(star, still.star());
        paper.figure(centre, "centre of rotation");
        paper.figure(centre.add(away.scalarMultiply(0.5)), far + ",\ntoward " + clock);
        double y = HEIGHT - 26;
        double tenth = 2 * RADIUS / 10;
        paper.svg().line(Look.line(palette.ink(), 2), new Vector2D(12, y), new Vector2D(12 + tenth, y));
        paper.svg()
                .text(
                        new Vector2D(20 + tenth, y + 5),
                        Svg.Anchor.START,
                        14,
                        palette.text(),
                        "a tenth (0.1) of the field width");
        paper.keepOff(new Box(0, y - 12, 360, HEIGHT));
    }

    /** A star and its arc, as far as it stays in the field. */
    private void rocked(Vector2D centre, double radius, double atRad, double size, double width) {
        List<Vector2D> seen = new ArrayList<>();
        for (Vector2D point : Strokes.arc(centre, radius, atRad - ROCKED, 2 * ROCKED)) {
            if (point.distance(MIDDLE) < RADIUS) {
                seen.add(point);
            }
        }
        if (seen.size() > 1) {
            paper.svg().polyline(Look.line(paper.palette().guide(), width), seen);
        }
        Vector2D star = Svg.around(centre, radius, atRad);
        if (star.distance(MIDDLE) < RADIUS) {
            paper.star(star, size);
        }
    }

    static String svg(SightingSketch.Drift drift, Palette palette) {
        String amount = Sheet.figure(drift.moved()) + " " + drift.unit();
        boolean stays = drift.moved() == 0;
        String direction = direction(drift.toward());
        EyepieceSketch sketch = new EyepieceSketch(
                stays ? "Drift: none" : "Drift: " + amount,
                "In the eyepiece, while the mount tracks. North is toward "
                        + Sheet.figure(hours(drift.points().north())) + " o'clock, west toward "
                        + Sheet.figure(hours(drift.points().west()))
                        + ": stars leave there with the drive off. "
                        + (stays
                                ? drift.star() + " stays on the line: neither north nor south."
                                : drift.star() + " goes " + amount + " " + direction + ".")
                        + " Drift east or west does not count.",
                palette);
        sketch.drift(drift, amount, direction);
        return sketch.paper.finished();
    }

    private static String direction(SightingSketch.Toward toward) {
        return toward instanceof SightingSketch.Edge edge
                ? "toward " + Sheet.figure(edge.clock().hours())
                : ((SightingSketch.SkyPoint) toward).north() ? "north" : "south";
    }

    private void drift(SightingSketch.Drift drift, String amount, String direction) {
        Palette palette = paper.palette();
        SkyInView points = drift.points();
        sides(points.north(), "N", "S", points.west(), "W", "E");
        Vector2D west = onPaper(points.west(), RADIUS - 34);
        Vector2D east = onPaper(points.west(), -(RADIUS - 34));
        paper.line("along", paper.faint(), east, west);
        Vector2D goes = drift.toward() instanceof SightingSketch.Edge edge
                ? onPaper(upRight(edge.clock().clockwiseFromTop()), 1).subtract(MIDDLE)
                : onPaper(points.north(), ((SightingSketch.SkyPoint) drift.toward()).north() ? 1 : -1)
                        .subtract(MIDDLE);
        if (drift.moved() == 0) {
            paper.star(MIDDLE, 5);
            paper.figure(MIDDLE, drift.star() + " stays on this line");
        } else {
            Vector2D end = MIDDLE.add(goes.scalarMultiply(length(drift)));
            ticks(drift, goes);
            paper.svg().circle(Look.line(palette.ink(), 1.5).dashed("2 3"), MIDDLE, 5);
            paper.arrow("drift", paper.measured(), MIDDLE, end.subtract(goes.scalarMultiply(6)));
            paper.star(end, 5);
            paper.name(end, drift.star());
            paper.figure(MIDDLE.add(goes.scalarMultiply(length(drift) / 2)), amount + "\n" + direction);
        }
        paper.letters(new Vector2D(180, HEIGHT - 34), 14, palette.text(), "stars leave at W with the drive off;");
        paper.letters(new Vector2D(180, HEIGHT - 14), 14, palette.text(), "drift east or west does not count");
    }

    /** Field widths are drawn to scale; other units are scaled to be visible. */
    private static double length(SightingSketch.Drift drift) {
        return drift.unit().startsWith("field")
                ? Math.max(LEAST_SEEN, Math.min(RADIUS - 16, 2 * RADIUS * drift.moved()))
                : LONG;
    }

    private void ticks(SightingSketch.Drift drift, Vector2D goes) {
        if (!drift.unit().startsWith("division") || drift.moved() < 1 || drift.moved() > MOST_DIVISIONS) {
            return;
        }
        Vector2D across = new Vector2D(-goes.getY(), goes.getX());
        for (int i = 0; i <= drift.moved() + 1; i++) {
            Vector2D at = MIDDLE.add(goes.scalarMultiply(LONG * i / drift.moved()));
            if (at.distance(MIDDLE) < RADIUS - 30) {
                paper.line("division", paper.edge(), at.add(-7, across), at.add(7, across));
            }
        }
    }

    static String svg(SightingSketch.Centred centred, Palette palette) {
        EyepieceSketch sketch = new EyepieceSketch(
                "Centred",
                "In the eyepiece, " + centred.star() + " is on the crosshair. Bring it there with the same slow motion"
                        + " each time, from the same side, then copy the mount's reading. Within the dashed ring,"
                        + " about an arcminute, it counts as centred.",
                palette);
        sketch.centred(centred);
        return sketch.paper.finished();
    }

    private void centred(SightingSketch.Centred centred) {
        for (Vector2D arm : List.of(new Vector2D(1, 0), new Vector2D(0, 1))) {
            paper.line("cross", paper.edge(), MIDDLE.add(-RADIUS, arm), MIDDLE.add(-12, arm));
            paper.line("cross", paper.edge(), MIDDLE.add(12, arm), MIDDLE.add(RADIUS, arm));
        }
        paper.svg().circle(paper.measured().dashed("4 4"), MIDDLE, 26);
        paper.star(MIDDLE, 6);
        paper.name(MIDDLE.add(new Vector2D(7, -7)), centred.star());
        paper.figure(
                MIDDLE.add(new Vector2D(18, 18)),
                "within " + Sheet.figure(Math.rint(centred.sigma().arcminutes() * 100) / 100) + "′ is centred");
        Vector2D from = MIDDLE.add(new Vector2D(-78, -62));
        paper.arrow("approach", Look.line(paper.palette().guide(), 2), from, MIDDLE.add(new Vector2D(-24, -19)));
        paper.name(from, "always from the same side");
    }

    /** Labels at the edges of the field. */
    private void sides(Vector2D first, String name, String opposite, Vector2D second, String other, String last) {
        String colour = paper.palette().text();
        paper.letters(onPaper(first, WITHIN), 14, colour, name);
        paper.letters(onPaper(first, -WITHIN), 14, colour, opposite);
        paper.letters(onPaper(second, WITHIN), 14, colour, other);
        paper.letters(onPaper(second, -WITHIN), 14, colour, last);
    }

    private static Vector2D onPaper(Vector2D inView, double radius) {
        return new Vector2D(MIDDLE.getX() + radius * inView.getX(), MIDDLE.getY() - radius * inView.getY());
    }

    private static Vector2D upRight(Angle clockwiseFromTop) {
        return new Vector2D(clockwiseFromTop.sin(), clockwiseFromTop.cos());
    }

    /** Clock hours, to the nearest half hour. */
    private static double hours(Vector2D inView) {
        double hours = Math.rint(Math.toDegrees(Math.atan2(inView.getX(), inView.getY())) / 15) / 2;
        return hours <= 0 ? hours + 12 : hours;
    }

    private static String words(View view) {
        return switch (view.orientation()) {
            case ERECT -> "erect view";
            case INVERTED -> "view upside down";
            case MIRRORED -> "view mirrored";
        };
    }
}
