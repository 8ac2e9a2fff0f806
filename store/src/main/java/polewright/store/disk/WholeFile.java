package polewright.store.disk;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.util.Arrays;

/**
 * Atomic writing and complete reading of a file: after a write it is either complete or unchanged, and no partial file
 * remains.
 */
public final class WholeFile {
    private static final int PIECE_BYTES = 1 << 16;

    private WholeFile() {}

    /**
     * Writes a file, replacing an existing one.
     *
     * @param file in an existing folder
     * @param making a folder on the same disk, in which it is written first
     * @param attributes its attributes, such as who may read it
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

    /** The same with the content of a buffer, from its position to its limit. */
    public static void write(Path file, ByteBuffer content, Path making) throws IOException {
        Path part = Files.createTempFile(making, file.getFileName().toString(), ".part");
        try {
            try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
                while (content.hasRemaining()) {
                    channel.write(content);
                }
            }
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /**
     * Its content, read in pieces. Reading it at once, as {@link Files#readAllBytes} does, passes it through native
     * memory of the same size, which Java keeps as long as the reading thread lives: on a server, until it stops.
     */
    public static byte[] read(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] content = new byte[Math.toIntExact(Files.size(file))];
            int filled = 0;
            int read = 0;
            while (read >= 0 && filled < content.length) {
                read = in.read(content, filled, Math.min(PIECE_BYTES, content.length - filled));
                filled += Math.max(0, read);
            }
            // Another program may just have truncated it.
            return filled == content.length ? content : Arrays.copyOf(content, filled);
        }
    }
}
