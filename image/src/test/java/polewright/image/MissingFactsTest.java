package polewright.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import polewright.sky.InputRefused;

/** The messages for a file that lacks metadata. */
class MissingFactsTest {
    private static final MissingFacts.TimeRemedy REMEDY = new MissingFacts.TimeRemedy("give the time", "give the zone");

    private static FrameFacts facts(Optional<LocalDateTime> local, double focalMm, double microns, String... remarks) {
        return new FrameFacts(
                Optional.empty(),
                local,
                Optional.empty(),
                focalMm > 0 ? OptionalDouble.of(focalMm) : OptionalDouble.empty(),
                microns > 0 ? OptionalDouble.of(microns) : OptionalDouble.empty(),
                Optional.empty(),
                List.of(remarks));
    }

    @Test
    void presentTime_isReturned() {
        Instant time = Instant.parse("2026-11-25T20:00:00Z");
        assertThat(MissingFacts.middle("dusk.fits", FrameFacts.NONE.takenAt(time), REMEDY))
                .isEqualTo(time);
    }

    @Test
    void missingTime_isRequested() {
        assertThatThrownBy(() -> MissingFacts.middle("dusk.png", FrameFacts.NONE, REMEDY))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.png does not say when it was taken. Give the time.");
    }

    @Test
    void unusableTime_isReportedWithTheReason() {
        FrameFacts facts = facts(Optional.empty(), 0, 0, "its DATE-OBS 'last night' is not a date with a time of day");
        assertThatThrownBy(() -> MissingFacts.middle("dusk.fits", facts, REMEDY))
                .hasMessage("dusk.fits does not say when it was taken"
                        + " (its DATE-OBS 'last night' is not a date with a time of day)."
                        + " Give the time.");
    }

    @Test
    void missingZone_isRequested() {
        FrameFacts facts = facts(Optional.of(LocalDateTime.parse("2026-11-25T21:00:15")), 0, 0);
        assertThatThrownBy(() -> MissingFacts.middle("dusk.jpg", facts, REMEDY))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.jpg gives the time by the camera's clock (2026-11-25 21:00:15) but not its zone."
                        + " Give the zone.");
    }
}
