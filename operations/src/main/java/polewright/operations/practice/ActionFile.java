package polewright.operations.practice;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import polewright.operations.OperationFailed;

/**
 * An append-only file of lines. A last line without its line end was interrupted while it was written, and is
 * ignored.
 */
final class ActionFile {
    // A file lock excludes other processes only, not other threads.
    private static final Object WITHIN_THIS_PROCESS = new Object();

    private final Path file;

    ActionFile(Path file) {
        this.file = file;
    }

    List<String> lines() {
        try {
            return whole(Files.readAllBytes(file));
        } catch (IOException e) {
            throw failed();
        }
    }

    /**
     * Appends the line computed from the lines so far, if any, under a lock.
     *
     * @return the lines afterwards
     */
    List<String> add(Function<List<String>, Optional<String>> next) {
        synchronized (WITHIN_THIS_PROCESS) {
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE);
                    FileLock lock = channel.lock()) {
                byte[] bytes = Files.readAllBytes(file);
                Optional<String> line = next.apply(whole(bytes));
                if (lock.isValid() && line.isPresent()) {
                    channel.truncate(wholeLength(bytes));
                    channel.position(channel.size());
                    ByteBuffer more = StandardCharsets.UTF_8.encode(line.get() + "\n");
                    while (more.hasRemaining()) {
                        channel.write(more);
                    }
                    channel.force(true);
                }
                return lines();
            } catch (IOException e) {
                throw failed();
            }
        }
    }

    private static List<String> whole(byte[] bytes) {
        return new String(bytes, 0, wholeLength(bytes), StandardCharsets.UTF_8)
                .lines()
                .toList();
    }

    private static int wholeLength(byte[] bytes) {
        int length = bytes.length;
        while (length > 0 && bytes[length - 1] != '\n') {
            length--;
        }
        return length;
    }

    private OperationFailed failed() {
        return new OperationFailed("the practice in " + file.getParent()
                + " cannot be read or written. Check the free space and the folder's permissions.");
    }
}
