package polewright.image.decode;

import polewright.sky.InputRefused;

/**
 * The time limit of a decode. Frames have no clock: the caller provides this, and the decoder checks it between steps
 * whose cost depends on what a file claims.
 */
@FunctionalInterface
public interface DecodeDeadline {
    /** No time limit. */
    DecodeDeadline NONE = () -> false;

    boolean isPast();

    /** Throws once the deadline has passed. */
    default void check() {
        if (isPast()) {
            throw new InputRefused(
                    "it took too long to decode, so it is probably damaged",
                    "copy it again from the camera, or take another frame");
        }
    }
}
