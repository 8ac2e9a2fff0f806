package polewright.report.scene;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import polewright.drawing.Palette;
import polewright.drawing.strip.NightAltitudes;
import polewright.drawing.strip.NightAltitudes.Point;
import polewright.drawing.strip.NightDrawing;
import polewright.mount.reach.SkyPath;
import polewright.planning.tonight.NightPlan;
import polewright.planning.tonight.TonightsPlan;
import polewright.sky.almanac.SunDepth;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/** Prepares the picture of the planned targets' altitudes. */
public final class TonightScene {
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final Duration AROUND = Duration.ofMinutes(30);

    private TonightScene() {}

    /** A complete SVG document that can also be embedded in a page, with hours of that time zone. */
    public static String svg(TonightsPlan plan, ZoneId zone, Palette palette) {
        return NightDrawing.svg(altitudes(plan), zone, palette);
    }

    private static NightAltitudes altitudes(TonightsPlan plan) {
        Interval night = plan.evening().darkness().sunsetToSunrise();
        Interval shown = new Interval(night.from().minus(AROUND), night.to().plus(AROUND));
        List<Interval> dark = Arrays.stream(SunDepth.values())
                .map(plan.evening().darkness()::below)
                .flatMap(Optional::stream)
                .map(shown::intersection)
                .flatMap(Optional::stream)
                .toList();
        List<Point> moon = sampled(shown, at -> {
            ObservingMoment moment = plan.evening().moment(at);
            return moment.refracted(SolarSystem.apparent(SolarSystemBody.MOON, moment))
                    .altitude()
                    .degrees();
        });
        return new NightAltitudes(
                shown,
                dark,
                moon,
                plan.plan().slots().stream().map(slot -> target(plan, slot)).toList());
    }

    private static NightAltitudes.Target target(TonightsPlan plan, NightPlan.Slot slot) {
        SkyPath path = slot.showing().path();
        ToDoubleFunction<Instant> altitude =
                at -> plan.evening().reach().altitudeSeen(path.at(at)).degrees();
        return new NightAltitudes.Target(
                slot.showing().windows().stream()
                        .map(window -> sampled(window, altitude))
                        .toList(),
                sampled(slot.when(), altitude));
    }

    private static List<Point> sampled(Interval when, ToDoubleFunction<Instant> altitude) {
        List<Point> points = new ArrayList<>();
        for (Instant at = when.from(); at.isBefore(when.to()); at = at.plus(STEP)) {
            points.add(new Point(at, altitude.applyAsDouble(at)));
        }
        points.add(new Point(when.to(), altitude.applyAsDouble(when.to())));
        return points;
    }
}
