package polewright.bench.frames;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import polewright.image.match.PatternStore;
import polewright.image.match.StoredPatterns;
import polewright.sky.atlas.StarAtlas;

/** Star patterns in a file of the bench's own, created on first use and mapped at every request. */
record MappedPatterns(Path file) implements PatternStore {
    @Override
    public Optional<StoredPatterns> kept(StarAtlas atlas) {
        try {
            if (!Files.exists(file)) {
                keep(StoredPatterns.computed(atlas));
            }
            try (FileChannel channel = FileChannel.open(file)) {
                return StoredPatterns.of(channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size()), atlas);
            }
        } catch (IOException broken) {
            throw new UncheckedIOException("the patterns cannot be mapped", broken);
        }
    }

    @Override
    public void keep(StoredPatterns patterns) {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            ByteBuffer bytes = patterns.bytes();
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
        } catch (IOException broken) {
            throw new UncheckedIOException("the patterns cannot be written", broken);
        }
    }
}
