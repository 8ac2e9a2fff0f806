package polewright.sky.almanac;

import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Site;
import polewright.sky.time.Interval;

/**
 * Rising and setting of a body over a level horizon, by the almanacs' conventions: for the Sun, an upper limb always
 * 16′ above its centre; for the Moon, its actual upper limb (14.7′ to 16.8′, with its distance); for planets and stars,
 * a point. Parallax is included: places are topocentric. Source: <i>Explanatory Supplement to the Astronomical
 * Almanac</i>, the chapter on rising and setting; 16′ and 34′ as defined by the U.S. Naval Observatory (quoted by
 * skyfield, documentation/almanac.rst, 40c6e6c2c4f3).
 */
public final class RisingAndSetting {
    private static final Angle SUN_SEMIDIAMETER = Angle.ofArcminutes(16);

    private RisingAndSetting() {}

    /** All risings and settings in an interval, in order. */
    public static List<Crossing> of(SkyBody body, Site site, Interval when, LevelHorizon horizon) {
        AltitudeTrack track = AltitudeTrack.of(body, site, when);
        Angle level = horizon.airlessAltitude();
        if (body == SolarSystemBody.MOON) {
            return track.crossingsOfUpperLimb(level);
        }
        return track.crossings(body == SolarSystemBody.SUN ? altitudeOfSun(horizon) : level);
    }

    /** Airless altitude of the Sun's centre when its upper limb is seen on the horizon. */
    static Angle altitudeOfSun(LevelHorizon horizon) {
        return horizon.airlessAltitude().minus(SUN_SEMIDIAMETER);
    }
}
