package polewright.operations.camera;

import java.nio.file.Path;
import java.time.Instant;
import polewright.image.Frame;
import polewright.image.decode.RowOrder;

/**
 * A frame's pixels, before its place in the sky is known.
 *
 * @param file that it is in
 * @param rows the row order in which the picture is drawn
 * @param frame its pixels and the facts from its file
 * @param began when its decoding began
 */
public record DecodedFrame(Path file, RowOrder rows, Frame frame, Instant began) {
    /** File name without the folder. */
    public String name() {
        return FrameFile.nameOf(file);
    }
}
