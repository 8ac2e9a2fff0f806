package polewright.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file of the documents that is generated from the code. */
public final class GeneratedFile {
    private GeneratedFile() {}

    /** Asserts that it is up to date; with {@code -Dpolewright.draw=true} it is generated first. */
    public static void assertIsCurrent(Path file, String generated) throws IOException {
        if (Boolean.getBoolean("polewright.draw")) {
            Files.writeString(file, generated);
        }
        assertThat(Files.readString(file)).isEqualTo(generated);
    }
}
