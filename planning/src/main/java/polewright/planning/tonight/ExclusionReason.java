package polewright.planning.tonight;

/** Why a star above the horizon is unsuitable for alignment. */
public enum ExclusionReason {
    /** The sky is too bright for it, by eye and through the telescope. */
    SKY_TOO_BRIGHT,
    /** Local horizon, fork, cables or the rig's lowest altitude. */
    OUT_OF_REACH,
    /**
     * Below 15°, where refraction and extinction are large; above 82°, which is awkward for fork and neck; or next to a
     * pole.
     */
    AWKWARD,
    /** Closer to the Sun than allowed. */
    NEAR_SUN,
    /** Lost in moonlight. */
    NEAR_MOON
}
