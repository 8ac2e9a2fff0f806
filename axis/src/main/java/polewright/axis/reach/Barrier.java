package polewright.axis.reach;

import polewright.sky.angle.Angle;

/** What keeps the tube from looking somewhere. */
public sealed interface Barrier {
    /** Below the horizon. */
    record BelowHorizon(Angle altitude) implements Barrier {}

    /** Behind trees, roofs, hills. */
    record BehindSkyline(Angle altitude, Angle skyline) implements Barrier {}

    /** Up, but lower than the rig or its owner looks. */
    record TooLow(Angle altitude, Angle lowest) implements Barrier {}

    /** What is behind the tube would strike the fork. */
    record StrikesFork(Angle declination, Angle farthest) implements Barrier {}

    /** The cables, or a stop, end the turn about the polar axis. */
    record CablesEnd(Angle hourAngle, Angle farthest) implements Barrier {}
}
