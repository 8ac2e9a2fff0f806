package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.camera.Drive;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameClues;
import polewright.web.session.FrameSource;
import polewright.web.session.NightSession;
import polewright.web.session.WatchedFrames;

/** A server just started on a slow laptop, whose first poll for frames takes seconds. */
@Tag("slow")
class SlowBeginningTest {
    private static final long SLOW_SECONDS = 3;

    @TempDir
    private Path folder;

    @Test
    void firstFrame_waitsForTheWatch_andIsNotRefused() throws IOException {
        Path captures = Files.createDirectory(folder.resolve("captures"));
        Workbench bench = new Workbench(
                Clock.systemUTC(),
                Map.of("POLEWRIGHT_LOG", folder.resolve("nights.sqlite").toString()),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL);
        CompletableFuture<Path> slow =
                new CompletableFuture<Path>().completeOnTimeout(captures, SLOW_SECONDS, TimeUnit.SECONDS);
        NightSession session = NightSession.of("", bench)
                .watching(
                        new FrameSource(() -> Optional.of(slow.join()), false, FrameClues.NONE, Drive.NOT_TOLD),
                        Clock.systemUTC());
        assertThat(CommandOutcome.run(session.workbench(), "begin", "--site", "54.60,-2.90,240")
                        .isGood())
                .isTrue();
        try (WatchedFrames frames = session.frames().orElseThrow()) {
            frames.open();
            assertThat(frames.refresh()).isTrue();
        }
    }
}
