package polewright.operations.watch;

import polewright.operations.camera.FrameFile;

/** What a look into a folder found. */
public sealed interface Arrival {
    /** A new frame, complete. */
    record Whole(FrameFile file) implements Arrival {}

    /** A file that was skipped, or cannot be read, in one line. */
    record PassedOver(String line) implements Arrival {}
}
