package polewright.store.disk;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/**
 * Why a file could not be written. The system's own message is in the computer's language and often says little, so the
 * disk, the folder and the limits of this session are looked at instead.
 *
 * @param what is in the way, after the file's name and "cannot be written": {@code "the disk is full"}
 * @param remedy what to do, an imperative without its full stop
 */
public record NotWritten(String what, String remedy) {
    // A disk that is all but full refuses a file and has a block or two left afterwards.
    private static final long TO_SPARE_BYTES = 16 * 1024;

    /**
     * Looks for the reason.
     *
     * @param file the file
     * @param bytes how large it would have become
     */
    public static NotWritten why(Path file, long bytes) {
        return seen(file, bytes)
                .orElseGet(() -> new NotWritten(
                        "the disk refused to write it", "check the disk or card, or name a file on" + " another"));
    }

    /** The reason, if it can be seen from outside. */
    public static Optional<NotWritten> seen(Path file, long bytes) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || Files.isDirectory(file)) {
            return found("it is a folder", "name a file in a folder that you may write to");
        }
        if (!Files.isDirectory(folder)) {
            return found("there is no folder " + folder, "create it, or name a file in an existing folder");
        }
        if (bytes > FileSizeLimit.bytes()) {
            return Optional.of(tooLarge(bytes));
        }
        try {
            FileStore disk = Files.getFileStore(folder);
            if (disk.isReadOnly()) {
                return found("the disk is write-protected", "allow writing to it, or name a file on another");
            }
            if (!Files.isWritable(folder) || (Files.exists(file) && !Files.isWritable(file))) {
                return found("you may not write there", "name a file in a folder that you may write to");
            }
            if (disk.getUsableSpace() < bytes + TO_SPARE_BYTES) {
                return found("the disk is full", "free some space, or name a file on another disk");
            }
        } catch (IOException unreadable) {
            return found("the disk does not respond", "check the disk or card, or name a file on another");
        }
        return Optional.empty();
    }

    /** The session's own limit is in the way. */
    public static NotWritten tooLarge(long bytes) {
        return new NotWritten(
                String.format(
                        Locale.ROOT,
                        "this session limits files to %,d bytes and %,d are needed",
                        FileSizeLimit.bytes(),
                        bytes),
                "start again without that limit (ulimit -f shows it)");
    }

    private static Optional<NotWritten> found(String what, String remedy) {
        return Optional.of(new NotWritten(what, remedy));
    }

    /** {@code FILE cannot be written: the disk is full. Free some space.} */
    public String sentence(Path file) {
        return file + " cannot be written: " + what + ". " + Character.toUpperCase(remedy.charAt(0))
                + remedy.substring(1) + ".";
    }
}
