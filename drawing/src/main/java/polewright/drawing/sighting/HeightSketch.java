package polewright.drawing.sighting;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Sheet;
import polewright.drawing.Strokes;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Look;
import polewright.drawing.Tilted;
import polewright.sky.angle.Angle;

/** Sketches from the side: the elevated pole on the right, altitudes above the level line. */
final class HeightSketch {
    private static final int HEIGHT = 330;
    private static final Vector2D HINGE = new Vector2D(120, 262);
    private static final double AXIS = 196;
    private static final double SCALE = 128;
    private static final double PLATE = 74;
    private static final int STEP_DEG = 10;
    private static final int LETTERED_DEG = 30;

    private final Sheet paper;

    private HeightSketch(String title, String description, Palette palette) {
        paper = new Sheet(HEIGHT, title, description, palette);
    }

    static String svg(SightingSketch.Scale scale, Palette palette) {
        String reading = Sheet.degrees(scale.reading());
        String pole = scale.isNorthern() ? "north" : "south";
        Angle altitude = scale.isFromZenith() ? Angle.QUARTER_TURN.minus(scale.reading()) : scale.reading();
        HeightSketch sketch = new HeightSketch(
                "Level and scale, from the side",
                "From the side, the " + pole + " celestial pole to the right. First the base is level: the bubble"
                        + " is between its marks. Then the pointer on the scale reads " + reading
                        + (scale.isFromZenith()
                                ? ", counted down from the zenith: the axis is " + Sheet.degrees(altitude) + " high."
                                : ", the altitude of the axis."),
                palette);
        sketch.level(pole);
        sketch.scale(scale.isFromZenith());
        sketch.wedge(altitude);
        sketch.reading(altitude, scale.isFromZenith(), reading);
        return sketch.paper.finished();
    }

    private void level(String pole) {
        Palette palette = paper.palette();
        paper.svg().polygon(paper.metal(), new Tilted(HINGE, 0).box(-104, 214, -18, -6));
        paper.keepOff(new Box(HINGE.getX() - 104, HINGE.getY() + 4, HINGE.getX() + 214, HINGE.getY() + 20));
        Vector2D vial = HINGE.add(new Vector2D(-62, -2));
        paper.svg().open("bubble");
        paper.svg().polygon(Look.filled(palette.glass(), palette.ink(), 1.6), new Tilted(vial, 0).box(-30, 30, -5, 11));
        paper.svg().circle(Look.filled(palette.background(), palette.ink(), 1.6), vial.add(new Vector2D(0, -3)), 6);
        for (int side : new int[] {-10, 10}) {
            paper.svg().line(paper.edge(), vial.add(new Vector2D(side, -12)), vial.add(new Vector2D(side, 6)));
        }
        paper.svg().close();
        paper.keepOff(Box.about(vial, 64, 24));
        paper.name(vial.add(new Vector2D(0, -12)), "1. level: bubble between its marks");
        paper.letters(new Vector2D(316, 304), 14, palette.text(), pole + " →");
    }

    private void scale(boolean isFromZenith) {
        Palette palette = paper.palette();
        paper.line("level", paper.faint(), HINGE, HINGE.add(new Vector2D(AXIS, 0)));
        paper.line("upright", paper.faint(), HINGE, HINGE.subtract(new Vector2D(0, AXIS)));
        paper.svg().polyline(paper.edge(), Strokes.arc(HINGE, SCALE, 0, Math.PI / 2));
        for (int height = 0; height <= 90; height += STEP_DEG) {
            boolean isLettered = height % LETTERED_DEG == 0;
            double at = Math.toRadians(height);
            paper.svg()
                    .line(
                            paper.edge(),
                            Svg.around(HINGE, SCALE, at),
                            Svg.around(HINGE, SCALE + (isLettered ? 10 : 6), at));
            if (isLettered) {
                paper.letters(
                        Svg.around(HINGE, SCALE + 24, at),
                        14,
                        palette.text(),
                        String.valueOf(isFromZenith ? 90 - height : height));
            }
        }
    }

    private void wedge(Angle altitude) {
        Tilted axis = new Tilted(HINGE, altitude.radians());
        Tilted plate = new Tilted(HINGE, altitude.radians() + Math.PI / 2);
        paper.line("plate", Look.line(paper.palette().ink(), 6), HINGE, plate.at(PLATE, 0));
        paper.svg().polygon(paper.metal(), axis.movedTo(0, PLATE / 2).box(4, 16, -24, 24));
        paper.arrow("axis", Look.line(paper.palette().axis(), 4), HINGE, axis.at(AXIS, 0));
        paper.svg().circle(paper.metal(), HINGE, 6);
        paper.name(axis.at(AXIS, 0), "along the axis");
        paper.name(plate.at(PLATE, 0), "wedge's plate");
    }

    private void reading(Angle altitude, boolean isFromZenith, String reading) {
        Angle fromTop = Angle.QUARTER_TURN.minus(altitude);
        Angle begin = isFromZenith ? Angle.ZERO : Angle.QUARTER_TURN;
        Angle swept = fromTop.minus(begin);
        paper.sweep("reading", paper.measured(), HINGE, 86, begin, swept);
        paper.figure(Sheet.clockwise(HINGE, 86, begin.plus(swept.times(0.5))), "2. reads " + reading);
    }

    static String svg(SightingSketch.Difference heights, Palette palette) {
        String difference = Sheet.degrees(heights.difference());
        String sense = heights.difference().radians() < 0 ? "axis lower: negative" : "axis higher";
        HeightSketch sketch = new HeightSketch(
                "Axis and star, altitudes",
                "From the side. Lay the inclinometer along the axis, then along the tube with " + heights.star()
                        + " centred. Enter the altitude of the axis minus that of the star, " + difference + "; here "
                        + sense + ".",
                palette);
        sketch.heights(heights, difference);
        sketch.paper.letters(new Vector2D(180, HEIGHT - 14), 14, palette.axis(), sense);
        return sketch.paper.finished();
    }

    private void heights(SightingSketch.Difference heights, String difference) {
        Vector2D eye = HINGE.add(new Vector2D(-70, 10));
        Angle starHeight = heights.axis().minus(heights.difference());
        Vector2D axis = Svg.around(eye, AXIS + 20, heights.axis().radians());
        Vector2D star = Svg.around(eye, AXIS + 20, starHeight.radians());
        Vector2D level = eye.add(new Vector2D(AXIS + 60, 0));
        paper.line("level", paper.faint(), eye, level);
        paper.name(level.subtract(new Vector2D(30, 0)), "level");
        paper.arrow("axis", Look.line(paper.palette().axis(), 4), eye, axis);
        paper.name(axis, "axis");
        paper.line("tube", Look.line(paper.palette().ink(), 2).dashed("9 5"), eye, star);
        paper.star(star, 5);
        paper.name(star, heights.star());
        inclinometer(eye, axis);
        inclinometer(eye, star);
        Angle begin = Angle.QUARTER_TURN.minus(starHeight);
        paper.sweep(
                "difference",
                paper.measured(),
                eye,
                140,
                begin,
                heights.difference().negated());
        paper.figure(Sheet.clockwise(eye, 140, begin.minus(heights.difference().times(0.5))), difference);
    }

    private void inclinometer(Vector2D from, Vector2D to) {
        Tilted along = Tilted.along(from, from.add(0.32, to.subtract(from)));
        paper.svg().polygon(paper.metal(), along.box(-14, 14, 3, 15));
        paper.svg()
                .circle(
                        Look.filled(
                                paper.palette().background(), paper.palette().ink(), 1.2),
                        along.at(0, 9),
                        4);
    }
}
