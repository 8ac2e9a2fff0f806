package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/** Withdrawals of withdrawals. */
class StandingEventsTest {
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");

    private static LoggedEvent event(long seq, NightEvent event) {
        return new LoggedEvent(seq, EVENING, event);
    }

    @Test
    void chainOfWithdrawals_isDecidedByTheLast() {
        List<LoggedEvent> events = new ArrayList<>(List.of(event(1, new NightEvent.Noted("dew"))));
        // Deep enough to overflow the stack of a recursive method.
        for (int seq = 2; seq <= 100_001; seq++) {
            events.add(event(seq, new NightEvent.Withdrawn(seq - 1)));
        }

        assertThat(StandingEvents.among(events).has(1)).isTrue();
        assertThat(StandingEvents.among(events.subList(0, 100_000)).has(1)).isFalse();
    }

    @Test
    void eventWithdrawnTwice_returnsOnlyWhenBothAreWithdrawn() {
        List<LoggedEvent> events = new ArrayList<>(List.of(
                event(1, new NightEvent.Noted("dew")),
                event(3, new NightEvent.Noted("wind")),
                event(4, new NightEvent.Withdrawn(1)),
                event(7, new NightEvent.Withdrawn(1)),
                event(8, new NightEvent.Withdrawn(7))));

        StandingEvents standing = StandingEvents.among(events);
        assertThat(standing.has(1)).isFalse();
        assertThat(standing.has(2)).isFalse();
        assertThat(standing.has(3)).isTrue();
        assertThat(standing.has(4)).as("a withdrawal is no event that counts").isFalse();

        events.add(event(9, new NightEvent.Withdrawn(4)));
        assertThat(StandingEvents.among(events).asLogged())
                .extracting(LoggedEvent::seq)
                .containsExactly(1L, 3L);
    }

    /** In a long night most events are unaffected: results derived from them then remain valid without inspection. */
    @Test
    void uncorrectedEvent_isTheLoggedObject() {
        LoggedEvent note = event(2, new NightEvent.Noted("dew"));
        LoggedEvent turn = event(3, new NightEvent.ScrewsTurned(1, 0));
        LoggedEvent corrected = event(4, new Correction.TurnCorrected(3, new NightEvent.ScrewsTurned(-1, 0)));

        List<LoggedEvent> meant =
                StandingEvents.among(List.of(note, turn, corrected)).asMeant();

        assertThat(meant.get(0)).isSameAs(note);
        assertThat(meant.get(1)).isEqualTo(event(3, new NightEvent.ScrewsTurned(-1, 0)));
    }
}
