package polewright.sky.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class LeapSecondsTest {
    @Test
    void noNoteUntilTheTableEnds() {
        assertThat(LeapSeconds.note(Instant.parse("2027-06-27T23:59:59Z"))).isEmpty();
        assertThat(LeapSeconds.note(Instant.parse("2027-06-28T00:00:00Z"))).isEmpty();
    }

    @Test
    void noteAfterTheTableEnds() {
        assertThat(LeapSeconds.note(Instant.parse("2027-06-28T00:00:01Z")))
                .contains("Leap seconds are known to 2027-06-28 only; TAI-UTC is taken as 37 s. Each one added since"
                        + " would shift the Moon by half an arcsecond and stars by nothing visible.");
    }
}
