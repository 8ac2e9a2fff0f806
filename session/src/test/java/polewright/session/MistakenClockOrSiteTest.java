package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import polewright.alignment.fix.Mistake;

/** How several possible mistakes of the clock are listed. */
class MistakenClockOrSiteTest {
    private static Mistake clock(int hours) {
        String size = Math.abs(hours) + (Math.abs(hours) == 1 ? " hour" : " hours");
        return new Mistake.ClockWrong(
                Duration.ofHours(hours), "the clock was " + size + (hours < 0 ? " fast" : " slow"));
    }

    private static String words(int... hours) {
        return new MistakenClockOrSite(IntStream.of(hours)
                        .mapToObj(MistakenClockOrSiteTest::clock)
                        .toList())
                .words()
                .orElseThrow();
    }

    @Test
    void hoursInOneDirection_areOneList() {
        assertThat(words(1, 2, 3)).isEqualTo("the clock was 1, 2 or 3 hours slow");
        assertThat(words(-12, -11, -10)).isEqualTo("the clock was 10, 11 or 12 hours fast");
    }

    @Test
    void anythingElse_isListedInFull() {
        assertThat(words(11)).isEqualTo("the clock was 11 hours slow");
        assertThat(words(1, -1)).isEqualTo("the clock was 1 hour slow, or if the clock was 1 hour fast");
        Mistake day = new Mistake.ClockWrong(Duration.ofDays(1), "the date was 1 day behind");
        assertThat(new MistakenClockOrSite(List.of(clock(2), day)).words())
                .contains("the clock was 2 hours slow, or if the date was 1 day behind");
        assertThat(new MistakenClockOrSite(List.of()).words()).isEmpty();
    }
}
