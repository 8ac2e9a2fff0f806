package polewright.planning.seasons;

import java.time.Duration;
import java.time.Instant;

/** Time in months, and as an angle with a period of one year. */
final class YearlyTime {
    static final double DAYS_IN_YEAR = 365.25;
    static final double MONTHS_IN_YEAR = 12;

    // A 1 January; years of 365.25 days from there stay within a day of the calendar.
    private static final Instant NEW_YEAR = Instant.parse("2001-01-01T00:00:00Z");
    private static final double SECONDS_IN_YEAR = DAYS_IN_YEAR * 86_400;

    private YearlyTime() {}

    static double months(Instant at) {
        return MONTHS_IN_YEAR * years(at);
    }

    /** Angle of the year, radians: 0 on 1 January. */
    static double yearRad(Instant at) {
        return 2 * Math.PI * years(at);
    }

    private static double years(Instant at) {
        return Duration.between(NEW_YEAR, at).toSeconds() / SECONDS_IN_YEAR;
    }
}
