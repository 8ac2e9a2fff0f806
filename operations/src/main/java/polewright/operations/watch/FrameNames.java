package polewright.operations.watch;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;

/** What the name of a file says about whether it is a frame. */
final class FrameNames {
    private static final Set<String> PASSING_ENDINGS =
            Set.of("tmp", "temp", "part", "partial", "crdownload", "filepart", "lock", "swp", "bak");
    private static final Set<String> FRAME_ENDINGS = Set.of(
            "fit", "fits", "fts", "tif", "tiff", "png", "jpg", "jpeg", "cr2", "cr3", "nef", "arw", "dng", "orf", "raf",
            "rw2", "pef");

    private FrameNames() {}

    /** Whether the file could be a frame: hidden, temporary and backup files are not. */
    static boolean mayBeFrame(Path file) {
        String name = String.valueOf(file.getFileName());
        return !name.startsWith(".")
                && !name.startsWith("~")
                && !name.endsWith("~")
                && !PASSING_ENDINGS.contains(ending(file));
    }

    /** Whether the file has the extension of a frame format. */
    static boolean isFrame(Path file) {
        return FRAME_ENDINGS.contains(ending(file));
    }

    private static String ending(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }
}
