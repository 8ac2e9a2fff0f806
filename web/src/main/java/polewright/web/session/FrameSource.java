package polewright.web.session;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import polewright.alignment.camera.Drive;
import polewright.operations.camera.FrameClues;

/**
 * Where frames come from, and what is told of them.
 *
 * @param folder where they are saved; asked anew each time, since every practice has its own; empty for none
 * @param ownFolder whether it is this program's own, made when a first frame is sent
 */
public record FrameSource(Supplier<Optional<Path>> folder, boolean ownFolder, FrameClues clues, Drive drive) {
    /** A folder that a capture program saves to. */
    public static FrameSource saved(Path folder, FrameClues clues, Drive drive) {
        return new FrameSource(() -> Optional.of(folder), false, clues, drive);
    }

    /** What is sent by a page, kept in a folder of this program's. */
    public static FrameSource sent(Path folder, FrameClues clues, Drive drive) {
        return new FrameSource(() -> Optional.of(folder), true, clues, drive);
    }
}
