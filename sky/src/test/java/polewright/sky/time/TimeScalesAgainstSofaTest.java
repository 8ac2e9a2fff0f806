package polewright.sky.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Values of the IAU SOFA test program (t_dat, t_utctai, t_taitt, t_utcut1), as in ERFA, src/t_erfa_c.c, 1d9738bed995.
 * An {@code Instant} counts nanoseconds, 1e-14 of a day, so no finer tolerance is possible.
 */
class TimeScalesAgainstSofaTest {
    private static final double SECONDS_PER_DAY = 86_400;
    private static final double ONE_NANOSECOND_DAYS = 1e-9 / SECONDS_PER_DAY;
    /** 2006 January 15, 0h: the date of SOFA's time-scale tests. */
    private static final Instant JD_2453750_5 = Instant.parse("2006-01-15T00:00:00Z");

    private static Instant afterMidnight(double days) {
        return JD_2453750_5.plusNanos(Math.round(days * SECONDS_PER_DAY * 1e9));
    }

    private static double daysAfterMidnight(JulianDate date) {
        return (date.day() - 2453750.5) + date.fraction();
    }

    @Test
    void utcBecomesTai() {
        JulianDate tai = SkyTime.of(afterMidnight(0.892100694)).inTai();
        assertThat(tai.scale()).isEqualTo(TimeScale.TAI);
        assertThat(daysAfterMidnight(tai)).isCloseTo(0.892482638444444, within(2 * ONE_NANOSECOND_DAYS));
    }

    @Test
    void taiBecomesTt() {
        // t_taitt starts from TAI 0.892482639; the corresponding UTC is 33 s earlier.
        JulianDate tt =
                SkyTime.of(afterMidnight(0.892482639 - 33 / SECONDS_PER_DAY)).inTt();
        assertThat(tt.scale()).isEqualTo(TimeScale.TT);
        assertThat(daysAfterMidnight(tt)).isCloseTo(0.892855139, within(2 * ONE_NANOSECOND_DAYS));
    }

    @Test
    void utcBecomesUt1() {
        JulianDate ut1 = new SkyTime(afterMidnight(0.892100694), 0.3341).inUt1();
        assertThat(ut1.scale()).isEqualTo(TimeScale.UT1);
        assertThat(daysAfterMidnight(ut1)).isCloseTo(0.892104560898148, within(2 * ONE_NANOSECOND_DAYS));
    }

    @ParameterizedTest
    @CsvSource({"2003-06-01T00:00:00Z, 32", "2008-01-17T00:00:00Z, 33", "2017-09-01T00:00:00Z, 37"})
    void taiMinusUtcIsTheWholeSecondsOfTheTable(Instant utc, double seconds) {
        SkyTime time = SkyTime.of(utc);
        double difference = (time.inTai().day() - time.inUtc().day())
                + (time.inTai().fraction() - time.inUtc().fraction());
        assertThat(difference * SECONDS_PER_DAY).isCloseTo(seconds, within(1e-6));
    }

    @Test
    void j2000IsMiddayOfTheFirstOfJanuary2000() {
        JulianDate utc = SkyTime.of(Instant.parse("2000-01-01T12:00:00Z")).inUtc();
        assertThat(utc.total()).isEqualTo(2451545.0);
        assertThat(utc.centuriesSinceJ2000()).isZero();
    }

    static Stream<Instant> manyInstants() {
        var random = new SplittableRandom(1972);
        return Stream.generate(() -> Instant.ofEpochSecond(random.nextLong(63_072_000L, 4_100_000_000L)))
                .limit(100);
    }

    @ParameterizedTest
    @MethodSource("manyInstants")
    void ttRunsAheadOfTaiBy32Point184Seconds(Instant utc) {
        SkyTime time = SkyTime.of(utc);
        double difference = (time.inTt().day() - time.inTai().day())
                + (time.inTt().fraction() - time.inTai().fraction());
        assertThat(difference * SECONDS_PER_DAY).isCloseTo(32.184, within(1e-6));
    }
}
