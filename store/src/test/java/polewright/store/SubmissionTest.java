package polewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.session.NightId;
import polewright.session.RandomEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** A command sent again with the same key is logged once. */
class SubmissionTest {
    private static final Optional<SubmissionKey> KEY = Optional.of(new SubmissionKey("sent-by-a-phone"));
    private static final Instant LATER = Instant.parse("2026-11-25T23:00:00Z");

    @TempDir
    private Path folder;

    private final NightEvent.Begun begun =
            (NightEvent.Begun) new RandomEvents(3).night(1).get(0).event();

    @Test
    void eventIsAddedOnce_andReturnedEachTime() {
        try (NightLog log = NightLog.open(folder.resolve("nights.db"))) {
            NightId night = log.begin(begun, Instant.parse("2026-11-25T20:00:00Z"));
            LoggedEvent first = log.append(night, new NightEvent.Noted("dew"), LATER, KEY);
            LoggedEvent again = log.append(night, new NightEvent.Noted("dew"), LATER.plusSeconds(60), KEY);
            assertThat(again).isEqualTo(first);
            assertThat(log.events(night)).hasSize(2);
            assertThat(log.submitted(KEY.orElseThrow())).hasValue(new Submission(night, first));
        }
    }

    @Test
    void eventForAnOutdatedState_isNotAdded_butAResentOneIsReturned() {
        try (NightLog log = NightLog.open(folder.resolve("nights.db"))) {
            NightId night = log.begin(begun, Instant.parse("2026-11-25T20:00:00Z"));
            KnownState known = new KnownState(Optional.of(night), OptionalLong.of(1));
            LoggedEvent first = log.append(night, new NightEvent.Noted("dew"), LATER, KEY, known);
            assertThat(log.append(night, new NightEvent.Noted("dew"), LATER, KEY, known))
                    .isEqualTo(first);
            assertThatThrownBy(() -> log.append(night, new NightEvent.Clamped(), LATER, Optional.empty(), known))
                    .isInstanceOf(LogChanged.class);
            NightId next = log.begin(begun, LATER.plusSeconds(60));
            KnownState old = new KnownState(Optional.of(night), OptionalLong.empty());
            assertThatThrownBy(() -> log.append(next, new NightEvent.Withdrawn(1), LATER, Optional.empty(), old))
                    .isInstanceOf(LogChanged.class)
                    .hasMessageContaining("another night");
            assertThat(log.events(night)).hasSize(2);
            assertThat(log.events(next)).hasSize(1);
        }
    }

    @Test
    void nightIsBegunOnce_withAllItsInitialEvents() {
        try (NightLog log = NightLog.open(folder.resolve("nights.db"))) {
            List<NightEvent> initial = List.of(new NightEvent.Noted("dew"));
            NightId first = log.begin(begun, initial, LATER, KEY);
            assertThat(log.begin(begun, initial, LATER, KEY)).isEqualTo(first);
            assertThat(log.nights()).hasSize(1);
            assertThat(log.events(first)).hasSize(2);
        }
    }

    @Test
    void key_isNeitherChangedNorRemoved() throws Exception {
        Path file = folder.resolve("nights.db");
        try (NightLog log = NightLog.open(file)) {
            log.begin(begun, List.of(), LATER, KEY);
        }
        for (String sql : List.of("UPDATE submission SET key = 'another-key'", "DELETE FROM submission")) {
            assertThatThrownBy(() -> {
                        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                                var statement = connection.createStatement()) {
                            statement.execute(sql);
                        }
                    })
                    .hasMessageContaining("a submission in the log is never");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "short", "with a blank", "semi;colon", "ääääääää"})
    void malformedKey_isRefused(String text) {
        assertThatThrownBy(() -> new SubmissionKey(text)).isInstanceOf(InputRefused.class);
    }
}
