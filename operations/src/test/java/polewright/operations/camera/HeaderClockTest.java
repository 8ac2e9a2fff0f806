package polewright.operations.camera;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Detection of local time in headers from the times at which files were written. */
class HeaderClockTest {
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    private static final int SETS = 1000;

    private static HeaderClock.Saved saved(double secondsIn, long headerAheadSeconds, double delaySeconds) {
        Instant truly = EVENING.plusMillis(Math.round(1000 * secondsIn));
        return new HeaderClock.Saved(
                truly.plusSeconds(headerAheadSeconds), truly.plusMillis(Math.round(1000 * delaySeconds)));
    }

    /** Three frames some minutes apart, each saved after it was taken. */
    private static List<HeaderClock.Saved> set(Random random, long headerAheadSeconds) {
        double slow = 1 + 30 * random.nextDouble();
        List<HeaderClock.Saved> frames = new ArrayList<>();
        double seconds = 0;
        for (int i = 0; i < 3; i++) {
            frames.add(saved(seconds, headerAheadSeconds, slow + 5 * random.nextDouble()));
            seconds += 30 + 200 * random.nextDouble();
        }
        return frames;
    }

    @ParameterizedTest
    @CsvSource({"2, +02:00", "-5, -05:00", "5.75, +05:45", "13, +13:00", "0.5, +00:30"})
    void localTime_isDetectedWithItsZone(double hours, String zone) {
        assertThat(HeaderClock.of(set(new Random(1), Math.round(3600 * hours))))
                .map(HeaderClock::zone)
                .contains(ZoneOffset.of(zone));
    }

    @Test
    void localTime_isDetectedInAllZones_andUtcIsNot() {
        Random random = new Random(20);
        int noticed = 0;
        int falsely = 0;
        for (int i = 0; i < SETS; i++) {
            long quarters = (random.nextBoolean() ? 1L : -1L) * (2 + random.nextInt(47));
            noticed += HeaderClock.of(set(random, 900 * quarters)).isPresent() ? 1 : 0;
            falsely += HeaderClock.of(set(random, 0)).isPresent() ? 1 : 0;
        }
        assertThat(noticed).isGreaterThanOrEqualTo(SETS * 95 / 100);
        assertThat(falsely).isZero();
    }

    /** Correct frames copied hours later all at once: their files have the same age, their headers do not. */
    @Test
    void framesCopiedTogether_areNotReported() {
        Random random = new Random(21);
        int falsely = 0;
        for (int i = 0; i < SETS; i++) {
            double later = 36_000 * random.nextDouble() + 600;
            List<HeaderClock.Saved> copied = new ArrayList<>();
            for (int k = 0; k < 3; k++) {
                Instant truly = EVENING.plusSeconds(60L * k + random.nextInt(30));
                copied.add(new HeaderClock.Saved(truly, EVENING.plusSeconds(Math.round(later) + k)));
            }
            falsely += HeaderClock.of(copied).isPresent() ? 1 : 0;
        }
        assertThat(falsely).isZero();
    }

    @Test
    void oneFrame_sufficesOnlyIfItsHeaderIsAheadOfItsFile() {
        assertThat(HeaderClock.of(List.of(saved(0, 7200, 4)))).isPresent();
        assertThat(HeaderClock.of(List.of(saved(0, -7200, 4)))).isEmpty();
        assertThat(HeaderClock.of(List.of())).isEmpty();
    }

    @Test
    void clockDaysOff_isNoZone() {
        assertThat(HeaderClock.of(List.of(saved(0, 5 * 86_400, 4)))).isEmpty();
    }

    @Test
    void words_giveTheDifference() {
        assertThat(new HeaderClock(Duration.ofHours(2)).words())
                .isEqualTo("2 hours ahead of the times their files were written");
        assertThat(new HeaderClock(Duration.ofMinutes(-330)).words())
                .isEqualTo("5.5 hours behind the times their files were written");
    }
}
