package polewright.drawing.strip;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Plot;
import polewright.drawing.Scale;
import polewright.drawing.Sheet;
import polewright.drawing.Svg.Look;
import polewright.sky.time.Interval;

/** The altitude of each planned target through the night, numbered as in the plan; thick during its slot. */
public final class NightDrawing {
    private static final int HEIGHT = 216;
    private static final Box AREA = new Box(38, 28, 350, 180);
    private static final double DARKER = 1.5;

    private final NightAltitudes night;
    private final Sheet sheet;
    private final AltitudeStrip strip;

    private NightDrawing(NightAltitudes night, Palette palette) {
        this.night = night;
        this.sheet = new Sheet(
                Sheet.WIDTH,
                HEIGHT,
                "Altitude of tonight's targets",
                night.targets().size() + " targets from sunset to sunrise, and the Moon.",
                palette);
        Interval shown = night.shown();
        this.strip = AltitudeStrip.on(sheet, AREA, Scale.of(shown.from(), shown.to(), AREA.left(), AREA.right()));
    }

    /** The picture as SVG, with hours of that time zone below it. */
    public static String svg(NightAltitudes night, ZoneId zone, Palette palette) {
        NightDrawing drawing = new NightDrawing(night, palette);
        drawing.darkness();
        drawing.strip.altitudes(30);
        drawing.hours(zone);
        List<Vector2D> moon = drawing.moon();
        drawing.targets();
        if (!moon.isEmpty()) {
            drawing.sheet.name(moon.get(moon.size() / 2), "Moon");
        }
        return drawing.sheet.finished();
    }

    /** Bars along the bottom, thicker for darker: they print, where a grey would not. */
    private void darkness() {
        double thickness = DARKER;
        for (Interval dark : night.dark()) {
            Vector2D from = strip.plot().at(dark.from(), 0);
            Vector2D to = strip.plot().at(dark.to(), 0);
            Vector2D down = new Vector2D(0, thickness);
            String guide = sheet.palette().guide();
            sheet.svg().polygon(Look.filled(guide, guide, 0), from, from.add(down), to.add(down), to);
            thickness += DARKER;
        }
    }

    private void hours(ZoneId zone) {
        List<Plot.Tick> hours = new ArrayList<>();
        ZonedDateTime hour = night.shown().from().atZone(zone).truncatedTo(ChronoUnit.HOURS);
        for (; !hour.toInstant().isAfter(night.shown().to()); hour = hour.plusHours(1)) {
            hours.add(new Plot.Tick(hour.getHour(), (double) hour.toEpochSecond(), String.valueOf(hour.getHour())));
        }
        strip.plot().ticks(hours);
    }

    private List<Vector2D> moon() {
        return strip.track(Look.line(sheet.palette().guide(), 1.2).dashed("2 4"), places(night.moon()));
    }

    private void targets() {
        for (NightAltitudes.Target target : night.targets()) {
            target.visible()
                    .forEach(visible -> strip.track(Look.line(sheet.palette().ink(), 0.7), places(visible)));
        }
        int number = 1;
        for (NightAltitudes.Target target : night.targets()) {
            List<Vector2D> slot = strip.track(sheet.bold(), places(target.slot()));
            slot.forEach(on -> sheet.keepOff(Box.about(on, 6, 6)));
            sheet.name(Box.about(slot.get(slot.size() / 2), 6, 6), String.valueOf(number++));
        }
    }

    private static List<Vector2D> places(List<NightAltitudes.Point> points) {
        return points.stream()
                .map(point -> new Vector2D((double) point.at().getEpochSecond(), point.altitudeDeg()))
                .toList();
    }
}
