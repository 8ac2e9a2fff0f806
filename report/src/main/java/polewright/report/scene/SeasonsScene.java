package polewright.report.scene;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import polewright.drawing.Palette;
import polewright.drawing.strip.AxisMotion;
import polewright.drawing.strip.AxisMotion.Night;
import polewright.drawing.strip.AxisMotion.Spot;
import polewright.drawing.strip.SeasonsDrawing;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.planning.seasons.AxisTrend;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.PierMotion;
import polewright.planning.seasons.Seasons;

/**
 * The cumulative movement of the axis by pier and wedge until each night: the drifts added up, without deliberate
 * turns.
 *
 * <p>It begins at zero. Where a drift is unknown or was set aside, the sequence breaks: it continues at the fitted
 * line, or at its last value if there is no line.
 */
public final class SeasonsScene {
    private static final int LINE_STEPS = 120;

    private final Seasons.Compared seasons;
    private final ToDoubleFunction<AxisOffset> arcmin;
    private final ToDoubleFunction<OffsetCovariance> arcmin2;
    private final Function<PierMotion.Fitted, AxisTrend> trend;

    private SeasonsScene(
            Seasons.Compared seasons,
            ToDoubleFunction<AxisOffset> arcmin,
            ToDoubleFunction<OffsetCovariance> arcmin2,
            Function<PierMotion.Fitted, AxisTrend> trend) {
        this.seasons = seasons;
        this.arcmin = arcmin;
        this.arcmin2 = arcmin2;
        this.trend = trend;
    }

    /** A complete SVG document that can also be embedded in a page. */
    public static String svg(Seasons.Compared seasons, Palette palette) {
        SeasonsScene east = new SeasonsScene(
                seasons,
                offset -> offset.east().arcminutes(),
                OffsetCovariance::eastEastArcmin2,
                PierMotion.Fitted::east);
        SeasonsScene up = new SeasonsScene(
                seasons, offset -> offset.up().arcminutes(), OffsetCovariance::upUpArcmin2, PierMotion.Fitted::up);
        return SeasonsDrawing.svg(seasons.nights().size(), east.motion(), up.motion(), palette);
    }

    private AxisMotion motion() {
        List<Night> nights = new ArrayList<>();
        double moved = 0;
        for (NightGap gap : seasons.gaps()) {
            if (gap instanceof NightGap.Drifted drifted && !isSetAside(drifted)) {
                if (nights.isEmpty()) {
                    nights.add(new Night(drifted.before().at(), 0, 0, false));
                } else if (!isFollowing(nights, drifted)) {
                    moved += carried(
                            nights.get(nights.size() - 1).at(), drifted.before().at());
                    nights.add(new Night(drifted.before().at(), moved, 0, false));
                }
                moved += arcmin.applyAsDouble(drifted.drift());
                nights.add(new Night(
                        drifted.after().at(), moved, Math.sqrt(arcmin2.applyAsDouble(drifted.covariance())), true));
            }
        }
        return new AxisMotion(nights, line(nights));
    }

    private boolean isSetAside(NightGap.Drifted gap) {
        return seasons.motion() instanceof PierMotion.Fitted fitted
                && fitted.setAside().contains(gap);
    }

    /** Whether it begins on the night on which the last one ended. */
    private static boolean isFollowing(List<Night> nights, NightGap.Drifted gap) {
        return gap.from()
                .axisAtStart()
                .filter(start -> start.at().equals(nights.get(nights.size() - 1).at()))
                .isPresent();
    }

    private List<Spot> line(List<Night> nights) {
        List<Spot> line = new ArrayList<>();
        if (nights.isEmpty() || !(seasons.motion() instanceof PierMotion.Fitted)) {
            return line;
        }
        Instant from = nights.get(0).at();
        Instant to = nights.get(nights.size() - 1).at();
        // Drifts determine the slope, not the level: the line is placed so that the mean deviation is zero.
        double above = nights.stream()
                .mapToDouble(night -> night.arcmin() - carried(from, night.at()))
                .average()
                .orElse(0);
        double seconds = Duration.between(from, to).toSeconds();
        for (int i = 0; i <= LINE_STEPS; i++) {
            Instant at = from.plusSeconds(Math.round(seconds * i / LINE_STEPS));
            line.add(new Spot(at, above + carried(from, at)));
        }
        return line;
    }

    private double carried(Instant from, Instant to) {
        return seasons.motion() instanceof PierMotion.Fitted fitted
                ? trend.apply(fitted).arcmin(from, to)
                : 0;
    }
}
