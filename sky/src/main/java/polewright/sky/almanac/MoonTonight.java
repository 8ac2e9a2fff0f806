package polewright.sky.almanac;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.time.Interval;

/**
 * The Moon during one night.
 *
 * @param phase at the middle of the night
 * @param crossings its risings and settings between sunset and sunrise, in order
 * @param up when it is above the horizon between sunset and sunrise
 * @param upInDarkest when it is above the horizon during the darkest hours of the night
 * @param moonless the rest of the darkest hours
 */
public record MoonTonight(
        LunarPhase phase,
        List<Crossing> crossings,
        List<Interval> up,
        List<Interval> upInDarkest,
        List<Interval> moonless) {
    public MoonTonight {
        crossings = List.copyOf(crossings);
        up = List.copyOf(up);
        upInDarkest = List.copyOf(upInDarkest);
        moonless = List.copyOf(moonless);
    }

    /** Over the almanacs' horizon. */
    public static MoonTonight of(Site site, Darkness darkness) {
        return of(site, darkness, LevelHorizon.ALMANAC);
    }

    public static MoonTonight of(Site site, Darkness darkness, LevelHorizon horizon) {
        Interval night = darkness.sunsetToSunrise();
        AltitudeTrack moon = AltitudeTrack.of(SolarSystemBody.MOON, site, night);
        List<Crossing> crossings = moon.crossingsOfUpperLimb(horizon.airlessAltitude());
        boolean startsUp = crossings.isEmpty()
                ? moon.upperLimb(night.from()).compareTo(horizon.airlessAltitude()) >= 0
                : crossings.get(0).sense() == Crossing.Sense.SETTING;
        List<Interval> up = Crossing.intervalsOn(night, crossings, Crossing.Sense.RISING, startsUp);
        List<Interval> down = Crossing.intervalsOn(night, crossings, Crossing.Sense.SETTING, !startsUp);
        Optional<Interval> darkest = darkness.darkest();
        return new MoonTonight(
                LunarPhase.at(AltitudeTrack.momentAt(site, darkness.midnight().at())),
                crossings,
                up,
                within(darkest, up),
                within(darkest, down));
    }

    /** Angle on the sky from the Moon's centre to a place, as seen from the site at that moment. */
    public static Angle separation(ApparentPlace place, ObservingMoment moment) {
        return SolarSystem.apparent(SolarSystemBody.MOON, moment).separation(place);
    }

    private static List<Interval> within(Optional<Interval> whole, List<Interval> parts) {
        List<Interval> shared = new ArrayList<>();
        for (Interval part : parts) {
            whole.flatMap(part::intersection)
                    .filter(both -> !both.length().isZero())
                    .ifPresent(shared::add);
        }
        return shared;
    }
}
