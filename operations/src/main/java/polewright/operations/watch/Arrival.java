package polewright.operations.watch;

import polewright.operations.camera.FrameFile;

/** What came of looking into a folder. */
public sealed interface Arrival {
    /** A new frame, whole. */
    record Whole(FrameFile file) implements Arrival {}

    /** Something that was passed over, or cannot be read, in one line. */
    record PassedOver(String line) implements Arrival {}
}
