package polewright.sky.time;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.jastronomy.jsofa.JSOFA;
import org.jastronomy.jsofa.JSOFAException;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;

/**
 * An instant and its value in each time scale.
 *
 * <p>{@code java.time.Instant} has no leap seconds: 23:59:60 cannot be represented, which does not matter at a
 * telescope.
 *
 * @param utc the instant in UTC
 * @param ut1MinusUtcSeconds UT1−UTC in seconds. Using 0 when it is unknown (|UT1−UTC| is kept under 0.9 s) rotates the
 *     whole sky about the pole by up to 13.5″, which shifts hour angles but not a polar axis found from drift or
 *     rotation.
 */
public record SkyTime(Instant utc, double ut1MinusUtcSeconds) {
    private static final double MAX_UT1_MINUS_UTC_SECONDS = 0.9;
    // SOFA's UTC begins in 1960; dates from 2101 on are beyond every table used here.
    private static final Instant FIRST = Instant.parse("1972-01-01T00:00:00Z");
    private static final Instant LAST = Instant.parse("2101-01-01T00:00:00Z");

    public SkyTime {
        if (Double.isNaN(ut1MinusUtcSeconds) || Math.abs(ut1MinusUtcSeconds) > MAX_UT1_MINUS_UTC_SECONDS) {
            throw new InputRefused(
                    "UT1-UTC of " + PlainNumber.asTyped(ut1MinusUtcSeconds) + " s is beyond 0.9 s",
                    "give the value of the IERS bulletin in seconds, or leave it out");
        }
        if (utc.isBefore(FIRST) || utc.isAfter(LAST)) {
            throw new InputRefused("the time " + utc + " is outside 1972 to 2100", "check the year");
        }
    }

    /** The instant with UT1−UTC taken as 0. */
    public static SkyTime of(Instant utc) {
        return new SkyTime(utc, 0);
    }

    public JulianDate inUtc() {
        LocalDateTime t = LocalDateTime.ofInstant(utc, ZoneOffset.UTC);
        try {
            var jd = JSOFA.jauDtf2d(
                    "UTC",
                    t.getYear(),
                    t.getMonthValue(),
                    t.getDayOfMonth(),
                    t.getHour(),
                    t.getMinute(),
                    t.getSecond() + t.getNano() * 1e-9);
            return new JulianDate(TimeScale.UTC, jd.djm0, jd.djm1);
        } catch (JSOFAException e) {
            throw new IllegalStateException("SOFA refused " + utc, e);
        }
    }

    public JulianDate inTai() {
        JulianDate u = inUtc();
        try {
            var jd = JSOFA.jauUtctai(u.day(), u.fraction());
            return new JulianDate(TimeScale.TAI, jd.djm0, jd.djm1);
        } catch (JSOFAException e) {
            throw new IllegalStateException("SOFA refused " + utc, e);
        }
    }

    public JulianDate inTt() {
        JulianDate tai = inTai();
        var jd = JSOFA.jauTaitt(tai.day(), tai.fraction());
        return new JulianDate(TimeScale.TT, jd.djm0, jd.djm1);
    }

    public JulianDate inUt1() {
        JulianDate u = inUtc();
        try {
            var jd = JSOFA.jauUtcut1(u.day(), u.fraction(), ut1MinusUtcSeconds);
            return new JulianDate(TimeScale.UT1, jd.djm0, jd.djm1);
        } catch (JSOFAException e) {
            throw new IllegalStateException("SOFA refused " + utc, e);
        }
    }
}
