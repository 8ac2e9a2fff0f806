package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.operations.ExitStatus;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.store.NightLog;

/** A table of centrings is logged like any other command: once per key, only onto the expected log, all or nothing. */
class CentringTableTest {
    @TempDir
    private Path folder;

    private CommandRun person;
    private String table;

    @BeforeEach
    void begin() throws IOException {
        person = new CommandRun(folder, "2026-01-15T20:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
        table = Files.writeString(person.file("centrings.csv"), """
                        time,star,ra,dec
                        2026-01-15T19:50Z,capella,5h17m38s,+46d12m36s
                        2026-01-15T19:55Z,rigel,5h15m50s,-8d05m00s
                        """).toString();
    }

    private void assertNothingAdded(int events, String... options) {
        String[] words = new String[options.length + 3];
        words[0] = "centre";
        words[1] = "--csv";
        words[2] = table;
        System.arraycopy(options, 0, words, 3, options.length);
        assertThat(person.run(words).status()).isEqualTo(ExitStatus.MOVED_ON);
        assertThat(person.events()).isEqualTo(events);
    }

    @Test
    void sameKeyTwice_isLoggedOnce() {
        person.good("centre", "--csv", table, "--once", "key-of-a-table");
        assertThat(person.events()).isEqualTo(3);
        assertThat(person.good("centre", "--csv", table, "--once", "key-of-a-table")
                        .lines()
                        .get(0))
                .isEqualTo("Already logged as #2; nothing added.");
        assertThat(person.events()).isEqualTo(3);
    }

    @Test
    void wrongNightOrLastEvent_isNotLogged() {
        person.good("note", "dew");
        assertNothingAdded(2, "--if-last", "1");
        assertNothingAdded(2, "--if-night", "2");
        person.good("centre", "--csv", table, "--if-last", "2", "--if-night", "1");
        assertThat(person.events()).isEqualTo(4);
    }

    @Test
    void entries_haveLoggingTimeAndCentringTime() {
        person.good("centre", "--csv", table);
        try (NightLog opened = NightLog.open(person.log())) {
            List<LoggedEvent> events = opened.events(opened.latest().orElseThrow());
            assertThat(events).extracting(event -> event.at().toString()).containsOnly("2026-01-15T20:00:00Z");
            Set<String> seen = new TreeSet<>();
            for (LoggedEvent logged : events) {
                if (logged.event() instanceof NightEvent.Measurement measured) {
                    seen.add(measured.seenAt().toString());
                }
            }
            assertThat(seen).containsExactly("2026-01-15T19:50:00Z", "2026-01-15T19:55:00Z");
        }
        assertThat(person.good("log").out()).contains("centred Capella (from 19:50)");
    }
}
