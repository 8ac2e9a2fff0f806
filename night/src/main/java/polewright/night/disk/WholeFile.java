package polewright.night.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;

/** A file that is there whole or, where it cannot be written, as it was before; half of it is left nowhere. */
public final class WholeFile {
    private WholeFile() {}

    /**
     * Writes it, in place of another of that name.
     *
     * @param file in a folder that is there
     * @param making a folder on the same disk, in which it is written first
     * @param attributes what it is made with, such as who may read it
     */
    public static void write(Path file, byte[] content, Path making, FileAttribute<?>... attributes)
            throws IOException {
        Path part = Files.createTempFile(making, file.getFileName().toString(), ".part", attributes);
        try {
            Files.write(part, content);
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
    }
}
