package polewright.drawing.strip;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Plot;
import polewright.drawing.Scale;
import polewright.drawing.Sheet;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.sky.PlainNumber;

/**
 * The cumulative movement of the axis by pier and wedge from night to night, without deliberate turns: a strip for east
 * and one for up on one scale, time to the right. Error bars are one sigma of the last drift; the dashed line is the
 * fit.
 */
public final class SeasonsDrawing {
    private static final int HEIGHT = 348;
    private static final Box EAST = new Box(42, 30, 350, 134);
    private static final Box UP = new Box(42, 170, 350, 274);
    private static final double[] ROUND = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120};
    private static final int MOST_STEPS = 4;
    private static final double DOT = 3;
    private static final int LONG_DAYS = 120;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM yy", Locale.ENGLISH);

    private final Sheet sheet;
    private final Instant from;
    private final Instant to;
    private final double step;
    private final int steps;

    private SeasonsDrawing(int nights, List<AxisMotion> both, Palette palette) {
        sheet = new Sheet(
                Sheet.WIDTH,
                HEIGHT,
                "Motion of the axis from night to night",
                nights + " nights; east above, up below, in arcminutes, without the turns made.",
                palette);
        List<Instant> times = both.stream()
                .flatMap(motion -> motion.nights().stream())
                .map(AxisMotion.Night::at)
                .sorted()
                .toList();
        Instant first = times.isEmpty() ? Instant.EPOCH : times.get(0);
        Instant last = times.isEmpty() ? Instant.EPOCH : times.get(times.size() - 1);
        // A margin on either side, so that the first and last dots are clear of the edge.
        Duration margin = Duration.between(first, last).dividedBy(30).plusHours(1);
        from = first.minus(margin);
        to = last.plus(margin);
        step = step(both.stream()
                .mapToDouble(motion -> motion.highest() - motion.lowest())
                .max()
                .orElse(0));
        steps = both.stream()
                .mapToInt(motion -> (int) Math.round((above(motion.highest()) - below(motion.lowest())) / step))
                .max()
                .orElse(1);
    }

    /**
     * The picture as SVG.
     *
     * @param nights how many are compared
     */
    public static String svg(int nights, AxisMotion east, AxisMotion up, Palette palette) {
        SeasonsDrawing drawing = new SeasonsDrawing(nights, List.of(east, up), palette);
        Sheet sheet = drawing.sheet;
        if (east.nights().isEmpty()) {
            sheet.write(EAST.middle(), Anchor.MIDDLE, "No drift between two nights known.");
            return sheet.finished();
        }
        drawing.strip(EAST, "east", "west", east);
        drawing.strip(UP, "up", "down", up).ticks(drawing.dates());
        sheet.write(HEIGHT - 10 - Sheet.LINE, "Bars: one sigma. Dashed: trend.");
        sheet.write(HEIGHT - 10, "Open: a new series begins.");
        return sheet.finished();
    }

    private Plot strip(Box box, String above, String below, AxisMotion motion) {
        // Both strips have the same scale, so that small movements look small; each is placed around its own dots.
        double lowest = below(motion.lowest());
        Plot plot = new Plot(
                sheet,
                box,
                Scale.of(from, to, box.left(), box.right()),
                new Scale(lowest, lowest + steps * step, box.bottom(), box.top()));
        sheet.svg().open(above);
        sheet.write(box.top() - 12, "Moved " + above + " (below 0: " + below + "), arcmin");
        for (double arcmin : plot.up().multiples(step)) {
            boolean isZero = Math.abs(arcmin) < step / 2;
            plot.level(isZero ? Look.line(sheet.palette().guide(), 1.2) : sheet.grid(), arcmin, figure(arcmin));
        }
        sheet.svg().openWindow(box);
        sheet.svg().open("line");
        plot.curve(
                sheet.measured().dashed("9 7"),
                motion.trend().stream()
                        .map(spot -> plot.at(spot.at(), spot.arcmin()))
                        .toList());
        sheet.svg().close();
        sheet.svg().closeWindow();
        for (int i = 0; i < motion.nights().size(); i++) {
            AxisMotion.Night night = motion.nights().get(i);
            if (night.isJoined()) {
                AxisMotion.Night before = motion.nights().get(i - 1);
                sheet.svg()
                        .line(
                                "drift",
                                Look.line(sheet.palette().guide(), 1.2),
                                plot.at(before.at(), before.arcmin()),
                                plot.at(night.at(), night.arcmin()));
            }
        }
        motion.nights().forEach(night -> dot(plot, night));
        sheet.svg().close();
        return plot;
    }

    private void dot(Plot plot, AxisMotion.Night night) {
        Vector2D middle = plot.at(night.at(), night.arcmin());
        if (night.isJoined()) {
            Vector2D top = plot.at(night.at(), night.arcmin() + night.sigmaArcmin());
            Vector2D bottom = plot.at(night.at(), night.arcmin() - night.sigmaArcmin());
            Vector2D cap = new Vector2D(DOT, 0);
            sheet.svg().line("sigma", sheet.thin(), top, bottom);
            sheet.svg().line(sheet.thin(), top.subtract(cap), top.add(cap));
            sheet.svg().line(sheet.thin(), bottom.subtract(cap), bottom.add(cap));
        }
        String fill = night.isJoined() ? sheet.palette().ink() : sheet.palette().background();
        sheet.svg().circle(Look.filled(fill, sheet.palette().ink(), 1.2), middle, DOT);
    }

    /** The first of each month, or days if there are few months. */
    private List<Plot.Tick> dates() {
        boolean isLong = Duration.between(from, to).toDays() > LONG_DAYS;
        List<Plot.Tick> dates = new ArrayList<>();
        LocalDate last = to.atZone(ZoneOffset.UTC).toLocalDate();
        for (LocalDate day = from.atZone(ZoneOffset.UTC).toLocalDate(); !day.isAfter(last); day = day.plusDays(1)) {
            if (!isLong || day.getDayOfMonth() == 1) {
                dates.add(new Plot.Tick(
                        isLong ? day.getMonthValue() - 1 : day.toEpochDay(),
                        (double) day.atStartOfDay(ZoneOffset.UTC).toEpochSecond(),
                        (isLong ? MONTH : DAY).format(day)));
            }
        }
        return dates;
    }

    private double below(double arcmin) {
        return step * Math.floor(arcmin / step - 0.1);
    }

    private double above(double arcmin) {
        return step * Math.ceil(arcmin / step + 0.1);
    }

    private static double step(double range) {
        for (double round : ROUND) {
            if (range <= MOST_STEPS * round) {
                return round;
            }
        }
        return ROUND[ROUND.length - 1] * Math.ceil(range / MOST_STEPS / ROUND[ROUND.length - 1]);
    }

    private static String figure(double arcmin) {
        double clean = Math.rint(arcmin * 10) / 10;
        return clean < 0 ? "−" + PlainNumber.of(-clean) : PlainNumber.of(clean + 0.0);
    }
}
