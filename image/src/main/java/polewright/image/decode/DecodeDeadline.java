package polewright.image.decode;

import polewright.sky.InputRefused;

/**
 * How long a decode may go on. Frames know no clock: the caller gives this, and the decoder asks it between steps that grow
 * with what a file claims.
 */
@FunctionalInterface
public interface DecodeDeadline {
    /** A decode that may take as long as it takes. */
    DecodeDeadline NONE = () -> false;

    boolean isPast();

    /** Throws once it is past. */
    default void check() {
        if (isPast()) {
            throw new InputRefused(
                    "it took too long to decode, so it is probably damaged",
                    "copy it again from the camera, or take another frame");
        }
    }
}
