package polewright.web.session;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import polewright.alignment.camera.Drive;
import polewright.operations.camera.FrameClues;

/**
 * Where frames come from, and what is known about them.
 *
 * @param folder where they are saved; looked up each time, because every practice has its own; empty for none
 * @param ownFolder whether the folder is this program's own, created when the first frame is uploaded
 */
public record FrameSource(Supplier<Optional<Path>> folder, boolean ownFolder, FrameClues clues, Drive drive) {
    /** Frames from a folder that a capture program saves to. */
    public static FrameSource saved(Path folder, FrameClues clues, Drive drive) {
        return new FrameSource(() -> Optional.of(folder), false, clues, drive);
    }

    /** Frames uploaded through a page, kept in a folder of this program. */
    public static FrameSource sent(Path folder, FrameClues clues, Drive drive) {
        return new FrameSource(() -> Optional.of(folder), true, clues, drive);
    }
}
