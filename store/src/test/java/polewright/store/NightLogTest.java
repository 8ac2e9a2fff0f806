package polewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.session.NightId;
import polewright.session.NightSummary;
import polewright.session.RandomEvents;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

class NightLogTest {
    private static final Instant AT = Instant.parse("2026-01-15T21:00:00Z");

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("made/on/the/way/nights.db");
    }

    private static NightEvent.Begun begun(long seed) {
        return (NightEvent.Begun) new RandomEvents(seed).event(EventKind.BEGIN, 1);
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void everyKindIsReadBackUnchanged_afterReopening(long seed) {
        List<LoggedEvent> night = new RandomEvents(seed).night(60);
        assertThat(new HashSet<>(
                        night.stream().map(e -> EventKind.of(e.event())).toList()))
                .hasSizeGreaterThan(10);
        NightId id;
        try (NightLog log = NightLog.open(file())) {
            id = log.begin((NightEvent.Begun) night.get(0).event(), night.get(0).at());
            for (LoggedEvent event : night.subList(1, night.size())) {
                assertThat(log.append(id, event.event(), event.at())).isEqualTo(event);
            }
        }
        try (NightLog log = NightLog.open(file())) {
            assertThat(log.events(id)).isEqualTo(night);
        }
    }

    @Test
    void log_isOneFile_whileOpenAndAfterwards() throws Exception {
        try (NightLog log = NightLog.open(file())) {
            NightId id = log.begin(begun(1), AT);
            log.append(id, new NightEvent.Clamped(), AT);
            assertThat(filesBeside()).containsExactly("nights.db");
        }
        assertThat(filesBeside()).containsExactly("nights.db");
    }

    private List<String> filesBeside() throws Exception {
        try (var files = Files.list(file().getParent())) {
            return files.map(f -> f.getFileName().toString()).toList();
        }
    }

    @Test
    void latestNight_isTheOneBegunLast_notTheOneImportedLast() {
        try (NightLog log = NightLog.open(file())) {
            assertThat(log.latest()).isEmpty();
            assertThat(log.nights()).isEmpty();
            // Half a second later: as plain ISO text it would sort the wrong way.
            log.begin(begun(1), AT);
            NightId tonight = log.begin(begun(2), AT.plusMillis(500));
            NightId old = log.importNight(List.of(
                    new LoggedEvent(1, AT.minusSeconds(86400), begun(3)),
                    new LoggedEvent(4, AT.plusSeconds(5), new NightEvent.Knocked())));
            assertThat(log.latest()).contains(tonight);
            assertThat(log.nights())
                    .containsExactly(
                            new NightSummary(tonight, AT.plusMillis(500), AT.plusMillis(500), begun(2).siteName(), 1),
                            new NightSummary(new NightId(1), AT, AT, begun(1).siteName(), 1),
                            new NightSummary(old, AT.minusSeconds(86400), AT.plusSeconds(5), begun(3).siteName(), 2));
            assertThat(log.append(old, new NightEvent.Clamped(), AT).seq()).isEqualTo(5);
        }
    }

    @Test
    void eventOutOfOrder_isRefused_andNothingIsAdded() {
        try (NightLog log = NightLog.open(file())) {
            NightId id = log.begin(begun(1), AT);
            assertThatThrownBy(() -> log.append(id, begun(2), AT))
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("event 2 begins a night that has already begun. Keep each night in a file of its own.");
            assertThatThrownBy(() -> log.append(id, new NightEvent.Withdrawn(2), AT))
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("there is no earlier event 2 in this night. Give the number of an earlier event.");
            assertThatThrownBy(() -> log.append(new NightId(9), new NightEvent.Clamped(), AT))
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("there is no night 9 in " + file() + ". List the nights and choose a number from"
                            + " there.");
            assertThat(log.events(id)).hasSize(1);
        }
    }

    @Test
    void eventThatDoesNotReadBack_isRefused_andNothingIsAdded() {
        try (NightLog log = NightLog.open(file())) {
            NightId id = log.begin(begun(1), AT);
            assertThatThrownBy(() -> log.append(id, new NightEvent.Noted("half \uD83D"), AT))
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("a text holds half of a character. Type it again.");
            assertThatThrownBy(() -> log.append(id, new NightEvent.Clamped(), Instant.parse("2206-01-15T21:00:00Z")))
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("at: the time 2206-01-15T21:00:00Z is outside 1972 to 2100. Check the year.");
            assertThat(log.events(id)).hasSize(1);
        }
    }

    @Test
    void failedImport_leavesTheLogUnchanged() throws Exception {
        try (NightLog log = NightLog.open(file())) {
            NightId id = log.begin(begun(1), AT);
            log.append(id, new NightEvent.Clamped(), AT);
            byte[] before = Files.readAllBytes(file());

            List<LoggedEvent> disordered = new ArrayList<>(new RandomEvents(5).night(30));
            disordered.add(new LoggedEvent(12, AT, new NightEvent.Clamped()));
            assertThatThrownBy(() -> log.importNight(disordered)).isInstanceOf(InputRefused.class);

            // The order is valid, so the import has started when its last event turns out to be unreadable.
            List<LoggedEvent> unreadable = new ArrayList<>(new RandomEvents(5).night(30));
            unreadable.add(new LoggedEvent(99, AT, new NightEvent.Noted("half \uD83D")));
            assertThatThrownBy(() -> log.importNight(unreadable)).isInstanceOf(InputRefused.class);

            assertThatThrownBy(() -> log.importNight(List.of()))
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("there is no event. The first must be a begin.");
            assertThat(Files.readAllBytes(file())).isEqualTo(before);
            assertThat(log.nights()).hasSize(1);
        }
    }
}
