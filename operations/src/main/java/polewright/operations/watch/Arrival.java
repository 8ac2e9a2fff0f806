package polewright.operations.watch;

import polewright.operations.camera.FrameFile;

/** The result of one look into a folder. */
public sealed interface Arrival {
    /** A new frame, complete. */
    record Whole(FrameFile file) implements Arrival {}

    /** A file that was skipped, or cannot be read, in one line. */
    record PassedOver(String line) implements Arrival {}
}
