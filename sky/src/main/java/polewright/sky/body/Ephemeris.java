package polewright.sky.body;

import polewright.sky.angle.Angle;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;

/** Apparent places of named bodies of every kind. */
public final class Ephemeris {
    private Ephemeris() {}

    /** Topocentric apparent place, without refraction. */
    public static ApparentPlace apparent(SkyBody body, ObservingMoment moment) {
        if (body instanceof FixedStar fixed) {
            return moment.apparent(fixed.star());
        }
        return SolarSystem.apparent((SolarSystemBody) body, moment);
    }

    /** Angle on the sky from a place to the centre of the Sun, 0 to 180°. */
    public static Angle sunDistance(ApparentPlace place, ObservingMoment moment) {
        return place.separation(SolarSystem.apparent(SolarSystemBody.SUN, moment));
    }
}
