package polewright.sky.body;

import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;

/** Placeholder until the ephemeris branch lands. */
public final class Ephemeris {
    private Ephemeris() {}

    public static ApparentPlace apparent(SkyBody b, ObservingMoment m) {
        return m.apparent(((FixedStar) b).star());
    }
}
