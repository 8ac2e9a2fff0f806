package polewright.planning.tonight;

/** Why a star that is up is no use to align on. */
public enum ExclusionReason {
    /** The sky is too bright for it, by eye and through the telescope. */
    SKY_TOO_BRIGHT,
    /** Skyline, fork, cables or the rig's lowest altitude. */
    OUT_OF_REACH,
    /** Under 15°, where the air bends and dims it, over 82°, where a fork and a neck complain, or beside a pole. */
    AWKWARD,
    /** Nearer than the Sun allows. */
    NEAR_SUN,
    /** Lost in the Moon's light. */
    NEAR_MOON
}
