package polewright.mount.rig;

/** Image orientation, compared with the naked eye facing the same way. */
public enum Orientation {
    /** As the naked eye: a finder with an erecting prism, or no optics at all. */
    ERECT,
    /** Rotated by 180°: a straight-through telescope or finder. */
    INVERTED,
    /** Upright but with left and right swapped: a telescope with a star diagonal. */
    MIRRORED
}
