package polewright.mount.reach;

import polewright.sky.angle.Angle;

/** What prevents the tube from pointing somewhere. Altitudes are apparent, refraction included. */
public sealed interface Barrier {
    /** Below the horizon. */
    record BelowHorizon(Angle altitude) implements Barrier {}

    /** Behind trees, roofs, hills. */
    record BehindSkyline(Angle altitude, Angle skyline) implements Barrier {}

    /** Above the horizon, but below the lowest altitude of the rig. */
    record TooLow(Angle altitude, Angle lowest) implements Barrier {}

    /**
     * The tube, or what is attached behind it, would hit the fork.
     *
     * @param part the end that hits
     * @param setting the declination wanted (altitude on an upright fork)
     * @param farthest the farthest that clears, with its sign
     */
    record StrikesFork(End part, Angle setting, Angle farthest) implements Barrier {}

    /** The cables, or a stop, limit the rotation about the polar axis; hour angles, west positive. */
    record CablesEnd(Angle hourAngle, Angle farthest) implements Barrier {}

    /** The end of the tube. */
    enum End {
        BACK,
        FRONT
    }
}
