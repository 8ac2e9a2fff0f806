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

/** A file as a whole: written, it is there whole or as it was before, and half of it is left nowhere. */
public final class WholeFile {
    private static final int PIECE_BYTES = 1 << 16;

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

    /** The same with what lies in a buffer, from its position to its limit. */
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
     * Its content, read piece by piece. Read at one go, as {@link Files#readAllBytes} does, a file passes through native
     * memory of its own size, which Java keeps for the thread that has read it, as long as the thread lives: of a server, until it
     * ends.
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
            // Another program may just have made it shorter.
            return filled == content.length ? content : Arrays.copyOf(content, filled);
        }
    }
}
