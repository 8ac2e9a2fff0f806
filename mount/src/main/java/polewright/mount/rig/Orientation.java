package polewright.mount.rig;

/** How a view shows the sky, against the naked eye facing the same way. */
public enum Orientation {
    /** As the naked eye: a finder with an erecting prism, or no optics at all. */
    ERECT,
    /** Turned upside down: a straight-through telescope or finder. */
    INVERTED,
    /** Upright but with left and right swapped: a telescope with a star diagonal. */
    MIRRORED
}
