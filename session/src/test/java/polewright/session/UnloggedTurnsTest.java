package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.InputRefused;
import polewright.sky.fields.BodyNames;

/** Turns logged after sightings of their effect. */
class UnloggedTurnsTest {
    private static final String NIGHT = """
            {"at":"2026-01-15T17:30:00Z","event":"begin","site_name":"Larkfell","site":{"lat_deg":54.6,"lon_deg":-2.9,"height_m":240}}
            {"at":"2026-01-15T17:40:00Z","event":"scale","altitude_deg":54.5}
            {"at":"2026-01-15T17:50:00Z","event":"scale","altitude_deg":57.5}
            """;
    private static final String MISSING = """
            {"at":"2026-01-15T18:00:00Z","event":"unlogged_turn","after_seq":2,"screw":"altitude"}
            """;

    private static List<LoggedEvent> events(String lines) {
        try {
            return JsonLines.readNights(new StringReader(lines), BodyNames.NONE).get(0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void unloggedTurn_isPlacedWhereItWasMade() {
        List<LoggedEvent> meant = StandingEvents.among(events(NIGHT + MISSING)).asMeant();

        assertThat(meant.stream().map(LoggedEvent::seq)).containsExactly(1L, 2L, 4L, 3L);
        assertThat(meant.get(2).event()).isEqualTo(new Correction.TurnNotLogged(2, false, true));
    }

    @Test
    void turnAfterAWithdrawnEvent_followsTheEventBefore() {
        String withdrawn = """
                {"at":"2026-01-15T18:01:00Z","event":"withdraw","withdrawn_seq":2}
                """;

        List<LoggedEvent> meant =
                StandingEvents.among(events(NIGHT + MISSING + withdrawn)).asMeant();

        assertThat(meant.stream().map(LoggedEvent::seq)).containsExactly(1L, 4L, 3L);
    }

    @Test
    void unloggedTurn_makesTheAxisUncertain() {
        double before = NightState.of(events(NIGHT)).fix().state().offset().up().degrees();
        double after = NightState.of(events(NIGHT + MISSING))
                .fix()
                .state()
                .offset()
                .up()
                .degrees();

        // The first scale reading no longer constrains the axis.
        assertThat(after).isGreaterThan(before + 0.3);
    }

    /** Screws cannot be turned against tight clamps, whether the turn is logged at once or later. */
    @Test
    void unloggedTurn_impliesLoosenedClamps() {
        String clamped = NIGHT + """
                {"at":"2026-01-15T17:55:00Z","event":"clamp"}
                """;

        assertThat(NightState.of(events(clamped)).clamped()).isTrue();
        assertThat(NightState.of(events(clamped + MISSING.replace("\"after_seq\":2", "\"after_seq\":4")))
                        .clamped())
                .isFalse();
    }

    @Test
    void unknownScrew_isRefused() {
        assertThatThrownBy(() -> events(NIGHT + MISSING.replace("altitude\"}", "tilt\"}")))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("Use azimuth or altitude, or leave it out for both");
    }

    @Test
    void missingEvent_isRefused() {
        assertThatThrownBy(() -> events(NIGHT + MISSING.replace(":2,", ":9,")))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("there is no earlier event 9 in this night");
    }
}
