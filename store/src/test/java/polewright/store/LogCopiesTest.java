package polewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.session.NightId;
import polewright.session.RandomEvents;
import polewright.session.event.EventKind;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** The log from before each of the last few nights. */
class LogCopiesTest {
    private static final Instant AT = Instant.parse("2026-01-15T21:00:00Z");

    @TempDir
    private Path folder;

    private final NightEvent.Begun begun = (NightEvent.Begun) new RandomEvents(1).event(EventKind.BEGIN, 1);

    @Test
    void newestCopiesAreKept_eachACompleteLog() throws IOException {
        Path file = folder.resolve("nights.sqlite");
        try (NightLog log = NightLog.open(file)) {
            log.keepCopy();
            assertThat(folder.resolve("nights-copies")).doesNotExist();
            for (int night = 1; night <= 8; night++) {
                log.keepCopy();
                log.begin(begun, AT);
            }
        }
        List<Path> copies = LogRescue.copies(file);
        assertThat(copies)
                .extracting(copy -> copy.getFileName().toString())
                .containsExactly(
                        "before-night-8.sqlite",
                        "before-night-7.sqlite",
                        "before-night-6.sqlite",
                        "before-night-5.sqlite",
                        "before-night-4.sqlite");
        try (NightLog copy = NightLog.open(copies.get(0))) {
            assertThat(copy.damage()).isEmpty();
            assertThat(copy.nights()).hasSize(7);
            assertThat(copy.begin(begun, AT)).isEqualTo(new NightId(8));
        }
    }

    @Test
    void copyThatCannotBeStored_isReported_andTheNightStillBegins() throws IOException {
        Path file = folder.resolve("nights.sqlite");
        Files.createFile(folder.resolve("nights-copies"));
        try (NightLog log = NightLog.open(file)) {
            log.begin(begun, AT);
            assertThatThrownBy(log::keepCopy)
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("no copy of the log was kept in " + folder.resolve("nights-copies")
                            + ": there is no folder "
                            + folder.resolve("nights-copies")
                            + ". Create it, or name a file in an existing folder; the night continues without a copy.");
            assertThat(log.begin(begun, AT)).isEqualTo(new NightId(2));
        }
    }
}
