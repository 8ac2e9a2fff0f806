package polewright.operations.watch;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;

/** Decides by a file's name whether it is a frame. */
final class FrameNames {
    private static final Set<String> TEMPORARY_EXTENSIONS =
            Set.of("tmp", "temp", "part", "partial", "crdownload", "filepart", "lock", "swp", "bak");
    private static final Set<String> FRAME_EXTENSIONS = Set.of(
            "fit", "fits", "fts", "tif", "tiff", "png", "jpg", "jpeg", "cr2", "cr3", "nef", "arw", "dng", "orf", "raf",
            "rw2", "pef");

    private FrameNames() {}

    /** Whether the file could be a frame: hidden, temporary and backup files are not. */
    static boolean mayBeFrame(Path file) {
        String name = String.valueOf(file.getFileName());
        return !name.startsWith(".")
                && !name.startsWith("~")
                && !name.endsWith("~")
                && !TEMPORARY_EXTENSIONS.contains(extension(file));
    }

    /** Whether the file has the extension of a frame format. */
    static boolean isFrame(Path file) {
        return FRAME_EXTENSIONS.contains(extension(file));
    }

    private static String extension(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }
}
