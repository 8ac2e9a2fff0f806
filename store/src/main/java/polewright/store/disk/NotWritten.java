package polewright.store.disk;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/**
 * The reason why a file could not be written. The operating system's own message is in the computer's language and
 * often unhelpful, so the disk, the folder and the limits of this session are examined instead.
 *
 * @param what the obstacle, following the file's name and "cannot be written": {@code "its disk is full"}
 * @param remedy what to do, an imperative without its full stop
 */
public record NotWritten(String what, String remedy) {
    // An almost full disk refuses a file but still has a block or two left afterwards.
    private static final long TO_SPARE_BYTES = 16 * 1024;

    /**
     * Determines the reason.
     *
     * @param file the file
     * @param bytes its size if it had been written
     */
    public static NotWritten why(Path file, long bytes) {
        return seen(file, bytes)
                .orElseGet(() -> new NotWritten(
                        "the disk refused to write it", "check the disk or card, or name a file on" + " another"));
    }

    /** The reason, if it can be determined from outside. */
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

    /** The session's own limit is the reason. */
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
