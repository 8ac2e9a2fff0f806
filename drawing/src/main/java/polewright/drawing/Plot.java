package polewright.drawing;

import java.time.Instant;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;

/**
 * An area of a sheet with a scale to the right and one upward.
 *
 * @param across from the area's left to its right
 * @param up from the area's bottom to its top
 */
public record Plot(Sheet sheet, Box area, Scale across, Scale up) {
    private static final double TICK = 4;
    private static final double APART = 8;
    private static final int[] STRIDES = {1, 2, 3, 4, 6, 12, 24};

    /**
     * A mark of the scale to the right.
     *
     * @param number of it among all possible ones: if there is no room for all, only multiples of some number are drawn
     */
    public record Tick(long number, double value, String words) {}

    public Vector2D at(double right, double high) {
        return new Vector2D(across.at(right), up.at(high));
    }

    public Vector2D at(Instant time, double high) {
        return new Vector2D(across.at(time), up.at(high));
    }

    /** A line across at a value of the upward scale, with its words to the left. */
    public void level(Look look, double value, String words) {
        sheet.svg().line(look, at(across.low(), value), at(across.high(), value));
        sheet.write(at(across.low(), value).add(new Vector2D(-6, 5)), Anchor.END, words);
    }

    /** Ticks below the area; only multiples of some number if their words would touch otherwise. */
    public void ticks(List<Tick> ticks) {
        for (Tick tick : withRoom(
                ticks.stream().filter(tick -> across.holds(tick.value())).toList())) {
            Vector2D foot = at(tick.value(), up.low());
            sheet.svg().line(sheet.thin(), foot, foot.add(new Vector2D(0, TICK)));
            sheet.write(new Vector2D(middle(tick), foot.getY() + TICK + Sheet.LINE), Anchor.MIDDLE, tick.words());
        }
    }

    /** Of its words: below the tick, unless they would leave the sheet. */
    private double middle(Tick tick) {
        double half = Lettering.width(tick.words(), Sheet.LETTERS) / 2;
        return Math.min(sheet.svg().width() - Sheet.MARGIN / 2 - half, across.at(tick.value()));
    }

    private List<Tick> withRoom(List<Tick> all) {
        List<Tick> some = all;
        for (int stride : STRIDES) {
            some = all.stream().filter(tick -> tick.number() % stride == 0).toList();
            if (haveRoom(some)) {
                return some;
            }
        }
        return some.subList(0, Math.min(1, some.size()));
    }

    private boolean haveRoom(List<Tick> ticks) {
        for (int i = 1; i < ticks.size(); i++) {
            double widths =
                    Lettering.width(ticks.get(i - 1).words() + ticks.get(i).words(), Sheet.LETTERS) / 2;
            if (middle(ticks.get(i)) - middle(ticks.get(i - 1)) < widths + APART) {
                return false;
            }
        }
        return true;
    }

    /** A curve that names keep off. */
    public void curve(Look look, List<Vector2D> points) {
        if (points.size() > 1) {
            sheet.svg().polyline(look, points);
            sheet.shun(points);
        }
    }
}
