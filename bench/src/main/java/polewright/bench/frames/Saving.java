package polewright.bench.frames;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** The ways in which a capture program saves. */
public enum Saving {
    WRITTEN("written under its name"),
    RENAMED("written apart and renamed");

    private final String words;

    Saving(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Saves the file, and returns when it was complete ({@link System#nanoTime}). */
    public long save(byte[] content, Path file) throws IOException {
        Path written = this == WRITTEN ? file : file.resolveSibling(file.getFileName() + ".part");
        try (FileChannel channel = FileChannel.open(written, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            ByteBuffer left = ByteBuffer.wrap(content);
            while (left.hasRemaining()) {
                var unused = channel.write(left);
            }
        }
        if (this == RENAMED) {
            Files.move(written, file, StandardCopyOption.ATOMIC_MOVE);
        }
        return System.nanoTime();
    }
}
