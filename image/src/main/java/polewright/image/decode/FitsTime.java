package polewright.image.decode;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import polewright.sky.InputRefused;
import polewright.sky.time.JulianDate;
import polewright.sky.time.SkyTime;

/** Dates as written in FITS headers, and their time scales (FITS standard 4.0, section 9). */
final class FitsTime {
    private static final Pattern DATE_TIME = Pattern.compile(
            "(\\d{4}-\\d{2}-\\d{2})[T ]\\s*(\\d{1,2}:\\d{2}(?::\\d{2}(?:\\.\\d*)?)?)Z?", Pattern.CASE_INSENSITIVE);
    private static final Pattern DATE = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
    /** Before 1999: day/month/year of the century 1900. */
    private static final Pattern OLD_DATE = Pattern.compile("(\\d{2})/(\\d{2})/(\\d{2})");

    private static final Pattern TIME = Pattern.compile("(\\d{1,2}):(\\d{2})(?::(\\d{2})(\\.\\d*)?)?");

    private static final LocalDate MJD_ZERO = LocalDate.of(1858, 11, 17);
    private static final double SECONDS_PER_DAY = 86_400;
    private static final double NANOS_PER_SECOND = 1e9;
    private static final double TAI_MINUS_GPS_SECONDS = 19;

    private FitsTime() {}

    /**
     * A date with the time of day, combined or separate.
     *
     * @param date {@code 2026-11-25T20:00:00.5}, {@code 2026-11-25}, or {@code 25/11/97}
     * @param timeOfDay {@code 20:00:00.5}, used if the date has none
     * @return empty if they do not give a time: a date alone does not
     */
    static Optional<LocalDateTime> parse(String date, Optional<String> timeOfDay) {
        try {
            Matcher whole = DATE_TIME.matcher(date);
            if (whole.matches()) {
                return time(whole.group(2), LocalDate.parse(whole.group(1)));
            }
            Optional<LocalDate> day = day(date);
            return day.flatMap(d -> timeOfDay.flatMap(time -> time(time.strip(), d)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Days since 1858-11-17T00:00. Good to a microsecond, as far as the digits written allow. */
    static LocalDateTime fromMjd(double mjd) {
        double day = Math.floor(mjd);
        return MJD_ZERO.plusDays((long) day)
                .atStartOfDay()
                .plusNanos(Math.round((mjd - day) * SECONDS_PER_DAY * 1e6) * 1000);
    }

    /**
     * A time in UTC.
     *
     * @param scale value of TIMESYS: UTC and its old names, TT, TAI, their old names, GPS, and TDB, which is within 2
     *     ms of TT; UT1 is treated as UTC (0.9 s at most)
     * @return empty for an unknown scale
     * @throws InputRefused if the date is outside the years covered by the scales
     */
    static Optional<Instant> toUtc(LocalDateTime time, String scale) {
        Instant same = time.toInstant(ZoneOffset.UTC);
        return switch (scale.toUpperCase(Locale.ROOT)) {
            case "UTC", "UT", "UT1", "GMT", "Z" -> Optional.of(same);
            case "TT", "TDT", "ET", "TDB" -> Optional.of(minus(same, ttMinusUtcSeconds(same)));
            case "TAI", "IAT" -> Optional.of(minus(same, taiMinusUtcSeconds(same)));
            case "GPS" -> Optional.of(minus(same, taiMinusUtcSeconds(same) - TAI_MINUS_GPS_SECONDS));
            default -> Optional.empty();
        };
    }

    private static Optional<LocalDateTime> time(String text, LocalDate day) {
        Matcher m = TIME.matcher(text);
        if (!m.matches()) {
            return Optional.empty();
        }
        int second = m.group(3) == null ? 0 : Integer.parseInt(m.group(3));
        double fraction = m.group(4) == null || m.group(4).length() == 1 ? 0 : Double.parseDouble("0" + m.group(4));
        // 23:59:60 in a leap second is the first second of the next day on a clock without leap seconds.
        boolean leap = second == 60;
        LocalTime whole = LocalTime.of(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2)), leap ? 59 : second);
        return Optional.of(
                day.atTime(whole).plusSeconds(leap ? 1 : 0).plusNanos(Math.round(fraction * NANOS_PER_SECOND)));
    }

    private static Optional<LocalDate> day(String date) {
        if (DATE.matcher(date).matches()) {
            return Optional.of(LocalDate.parse(date));
        }
        Matcher old = OLD_DATE.matcher(date);
        if (!old.matches()) {
            return Optional.empty();
        }
        return Optional.of(LocalDate.of(
                1900 + Integer.parseInt(old.group(3)), Integer.parseInt(old.group(2)), Integer.parseInt(old.group(1))));
    }

    // The difference changes only at a leap second, so an argument that is off by a minute matters only in that minute.
    private static double taiMinusUtcSeconds(Instant near) {
        SkyTime time = SkyTime.of(near);
        return seconds(time.inTai(), time.inUtc());
    }

    private static double ttMinusUtcSeconds(Instant near) {
        SkyTime time = SkyTime.of(near);
        return seconds(time.inTt(), time.inUtc());
    }

    private static double seconds(JulianDate later, JulianDate earlier) {
        double seconds = ((later.day() - earlier.day()) + (later.fraction() - earlier.fraction())) * SECONDS_PER_DAY;
        // Both parts are known to a microsecond; the difference is a whole number of milliseconds.
        return Math.round(seconds * 1000) / 1000.0;
    }

    private static Instant minus(Instant time, double seconds) {
        return time.minusNanos(Math.round(seconds * NANOS_PER_SECOND));
    }
}
