package polewright.operations.camera;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.image.match.StoredPatterns;
import polewright.sky.atlas.SkyCells;
import polewright.sky.atlas.StarAtlas;

class PatternFileTest {
    private static final int STARS = 300;

    @TempDir
    private Path folder;

    /** An invented sky of few stars: the real one takes seconds to compute. */
    private static StarAtlas smallAtlas() throws IOException {
        Random random = new Random(1);
        ByteBuffer bytes = ByteBuffer.allocate(20 + STARS * 7 * Double.BYTES + SkyCells.count() * Short.BYTES);
        bytes.put(StarAtlas.MAGIC.getBytes(StandardCharsets.US_ASCII));
        bytes.putInt(STARS).putInt(SkyCells.count()).putInt(0);
        for (int i = 0; i < STARS; i++) {
            bytes.putDouble(360 * random.nextDouble()).putDouble(60 - 120 * random.nextDouble());
            bytes.putDouble(0).putDouble(0).putDouble(0).putDouble(0).putDouble(0.01 * i);
        }
        return StarAtlas.read(new ByteArrayInputStream(bytes.array()));
    }

    @Test
    void patterns_areReusedAtTheNextStart() throws IOException {
        StarAtlas atlas = smallAtlas();
        Path file = folder.resolve("patterns.bin");
        assertThat(new PatternFile(file).kept(atlas)).isEmpty();
        StoredPatterns patterns = StoredPatterns.computed(atlas);
        new PatternFile(file).keep(patterns);
        assertThat(new PatternFile(file).kept(atlas))
                .hasValueSatisfying(kept -> assertThat(kept.bytes()).isEqualTo(patterns.bytes()));
        assertThat(folder).isDirectoryContaining(file::equals).isDirectoryNotContaining("glob:**.part");
    }

    @Test
    void damagedFile_isIgnoredAndReplaced() throws IOException {
        StarAtlas atlas = smallAtlas();
        Path file = folder.resolve("patterns.bin");
        new PatternFile(file).keep(StoredPatterns.computed(atlas));
        byte[] damaged = Files.readAllBytes(file);
        damaged[damaged.length / 2] ^= 1;
        Files.write(file, damaged);
        assertThat(new PatternFile(file).kept(atlas)).isEmpty();
        new PatternFile(file).keep(StoredPatterns.computed(atlas));
        assertThat(new PatternFile(file).kept(atlas)).isPresent();
    }

    @Test
    void unwritableFile_costsOnlyTime() throws IOException {
        StarAtlas atlas = smallAtlas();
        PatternFile nowhere = new PatternFile(folder.resolve("missing").resolve("patterns.bin"));
        nowhere.keep(StoredPatterns.computed(atlas));
        assertThat(nowhere.kept(atlas)).isEmpty();
        assertThat(new PatternFile(Files.createFile(folder.resolve("empty"))).kept(atlas))
                .isEmpty();
        assertThat(new PatternFile(Files.createDirectory(folder.resolve("folder"))).kept(atlas))
                .isEmpty();
    }
}
