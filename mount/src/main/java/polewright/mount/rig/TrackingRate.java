package polewright.mount.rig;

import polewright.sky.time.SiderealRate;

/** Rate of the right-ascension drive. */
public enum TrackingRate {
    /** One turn per sidereal day: correct for stars without refraction. */
    SIDEREAL,
    /**
     * One turn in 1436.47 mean minutes: slowed to follow refraction near the meridian on the equator (the rate
     * attributed to E. S. King, 1902).
     */
    KING;

    /** Arcseconds per second of mean solar time. */
    public double arcsecPerSecond() {
        return switch (this) {
            case SIDEREAL -> 1296000 / SiderealRate.SECONDS_PER_TURN;
            case KING -> 1296000 / (1436.47 * 60);
        };
    }
}
