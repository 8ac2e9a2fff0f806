package polewright.operations.camera;

import java.nio.file.Path;
import java.time.Instant;
import polewright.image.Frame;
import polewright.image.decode.RowOrder;

/**
 * A frame's pixels, not placed yet.
 *
 * @param file that it is in
 * @param rows how the picture is drawn
 * @param frame its pixels, and what the file says of it
 * @param began when its decoding began
 */
public record DecodedFrame(Path file, RowOrder rows, Frame frame, Instant began) {
    /** Of its file, without the folder. */
    public String name() {
        return FrameFile.nameOf(file);
    }
}
