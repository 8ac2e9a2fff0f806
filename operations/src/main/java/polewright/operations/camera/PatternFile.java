package polewright.operations.camera;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import polewright.image.match.PatternStore;
import polewright.image.match.StoredPatterns;
import polewright.sky.atlas.StarAtlas;
import polewright.store.disk.WholeFile;

/**
 * The star patterns of the whole sky in a file next to the program, mapped into memory. It is only a cache: a file
 * that is missing, stale or damaged costs a few seconds once; one that cannot be written costs them at every start.
 */
final class PatternFile implements PatternStore {
    // Set by the launcher, which finds the program's own files.
    private static final String PROPERTY = "polewright.patterns";

    private final Path file;

    PatternFile(Path file) {
        this.file = file;
    }

    /** The file named by the launcher; without it nothing is cached. */
    static PatternStore ofLauncher() {
        String named = System.getProperty(PROPERTY, "");
        return named.isEmpty()
                ? PatternStore.NONE
                : new PatternFile(Path.of(named).toAbsolutePath());
    }

    @Override
    public Optional<StoredPatterns> kept(StarAtlas atlas) {
        return mapped().flatMap(bytes -> StoredPatterns.of(bytes, atlas));
    }

    private Optional<ByteBuffer> mapped() {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try (FileChannel channel = FileChannel.open(file)) {
            // The mapping stays valid even when another process replaces the file.
            return channel.size() > Integer.MAX_VALUE
                    ? Optional.empty()
                    : Optional.of(channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size()));
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }

    @Override
    public void keep(StoredPatterns patterns) {
        try {
            WholeFile.write(file, patterns.bytes(), file.resolveSibling(""));
        } catch (IOException notKept) {
            // This run has them in memory; the next computes them again.
        }
    }
}
