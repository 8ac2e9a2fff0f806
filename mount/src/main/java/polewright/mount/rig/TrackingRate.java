package polewright.mount.rig;

import polewright.sky.time.SiderealRate;

/** How fast the right-ascension drive turns. */
public enum TrackingRate {
    /** One turn a sidereal day: right for stars without air. */
    SIDEREAL,
    /**
     * One turn in 1436.47 mean minutes: slowed as refraction slows the stars near the meridian on the equator (the rate
     * attributed to E. S. King, 1902).
     */
    KING;

    /** Arcseconds of turn in a second of mean solar time. */
    public double arcsecPerSecond() {
        return switch (this) {
            case SIDEREAL -> 1296000 / SiderealRate.SECONDS_PER_TURN;
            case KING -> 1296000 / (1436.47 * 60);
        };
    }
}
