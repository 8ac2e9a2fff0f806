package polewright.operations.watch;

import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A wait for a folder ends when something is saved there, and otherwise after its time. */
class FolderNewsTest {
    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 2, unit = TimeUnit.MINUTES)
    void newFile_endsTheWait() throws IOException, InterruptedException {
        try (FolderNews news = FolderNews.of(folder)) {
            Files.write(folder.resolve("a.fits"), new byte[] {1});
            // Longer than the test may take.
            news.await(Duration.ofHours(1));
        }
    }

    @Test
    void withoutNews_theWaitTakesItsFullTime() {
        try (FolderNews news = FolderNews.of(folder)) {
            assertThatCode(() -> news.await(Duration.ofMillis(20))).doesNotThrowAnyException();
        }
    }

    @Test
    void folderWithoutNotification_isWaitedForAnyway() {
        try (FolderNews news = FolderNews.of(folder.resolve("not-there"))) {
            assertThatCode(() -> news.await(Duration.ofMillis(20))).doesNotThrowAnyException();
        }
    }
}
