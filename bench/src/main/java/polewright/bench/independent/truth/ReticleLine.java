package polewright.bench.independent.truth;

/** How the reticle line was set across which a drift is read. */
public enum ReticleLine {
    /** A star ran along it with the drive off: across it is the sky's north. */
    BY_TRAIL,
    /** A star was moved across it by slow motion in declination: the mount's north. */
    BY_SLOW_MOTION
}
