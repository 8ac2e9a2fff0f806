package polewright.sky.almanac;

import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Site;
import polewright.sky.time.Interval;

/**
 * When a body rises and sets over a level horizon, as almanacs reckon it: the Sun by an upper edge that is always 16′
 * above its centre, the Moon by its own upper edge (14.7′ to 16.8′, with its distance), planets and stars as points.
 * Parallax is in: places are seen from the site. Source: <i>Explanatory Supplement to the Astronomical Almanac</i>, the
 * chapter on rising and setting (from memory).
 */
public final class RisingAndSetting {
    private static final Angle SUN_SEMIDIAMETER = Angle.ofArcminutes(16);

    private RisingAndSetting() {}

    /** All risings and settings in that time, in order. */
    public static List<Crossing> of(SkyBody body, Site site, Interval when, LevelHorizon horizon) {
        AltitudeTrack track = AltitudeTrack.of(body, site, when);
        Angle level = horizon.airlessAltitude();
        if (body == SolarSystemBody.MOON) {
            return track.crossingsOfUpperLimb(level);
        }
        return track.crossings(body == SolarSystemBody.SUN ? altitudeOfSun(horizon) : level);
    }

    /** Airless altitude of the Sun's centre when its upper edge is seen on the horizon. */
    static Angle altitudeOfSun(LevelHorizon horizon) {
        return horizon.airlessAltitude().minus(SUN_SEMIDIAMETER);
    }
}
