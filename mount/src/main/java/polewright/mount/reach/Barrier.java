package polewright.mount.reach;

import polewright.sky.angle.Angle;

/** What keeps the tube from looking somewhere. Altitudes are as seen, refraction included. */
public sealed interface Barrier {
    /** Below the horizon. */
    record BelowHorizon(Angle altitude) implements Barrier {}

    /** Behind trees, roofs, hills. */
    record BehindSkyline(Angle altitude, Angle skyline) implements Barrier {}

    /** Up, but lower than the rig or its owner looks. */
    record TooLow(Angle altitude, Angle lowest) implements Barrier {}

    /**
     * The tube, or what is behind it, would strike the fork.
     *
     * @param part which end strikes
     * @param setting declination (altitude on a fork set upright) that was asked for
     * @param farthest the farthest that clears, with its sign
     */
    record StrikesFork(End part, Angle setting, Angle farthest) implements Barrier {}

    /** The cables, or a stop, end the turn about the polar axis; hour angles, west positive. */
    record CablesEnd(Angle hourAngle, Angle farthest) implements Barrier {}

    /** Which end of the tube. */
    enum End {
        BACK,
        FRONT
    }
}
