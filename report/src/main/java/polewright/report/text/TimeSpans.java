package polewright.report.text;

import java.time.Duration;
import java.util.Locale;
import polewright.sky.PlainNumber;

/** Durations as people say them. */
public final class TimeSpans {
    private static final double LONG_SECONDS = 120;
    private static final double LONG_MINUTES = 120;

    private TimeSpans() {}

    /** {@code 30 s}, {@code 5 minutes}, {@code 3 hours}: what was typed, in a suitable unit. */
    public static String of(Duration span) {
        double seconds = span.toMillis() / 1000.0;
        if (seconds < LONG_SECONDS || (seconds % 60 != 0 && seconds < 600)) {
            return Wrapping.unbroken(PlainNumber.of(seconds) + " s");
        }
        double minutes = seconds / 60;
        if (minutes <= LONG_MINUTES && minutes != LONG_MINUTES) {
            return Wrapping.unbroken(PlainNumber.of(minutes) + " minutes");
        }
        return Wrapping.unbroken(PlainNumber.of(Math.rint(minutes / 6) / 10) + " hours");
    }

    /** An upper limit, never rounded up: {@code 0.8 s}, {@code 94 s}, {@code 4 minutes}. */
    public static String atMost(Duration span) {
        double seconds = span.toMillis() / 1000.0;
        if (seconds < 10) {
            return Wrapping.unbroken(String.format(Locale.ROOT, "%.1f s", Math.floor(seconds * 10) / 10));
        }
        if (seconds < LONG_SECONDS) {
            return Wrapping.unbroken(String.format(Locale.ROOT, "%.0f s", Math.floor(seconds)));
        }
        double minutes = seconds / 60;
        if (minutes < 10) {
            return Wrapping.unbroken(PlainNumber.of(Math.floor(minutes * 2) / 2) + " minutes");
        }
        if (minutes < LONG_MINUTES) {
            return Wrapping.unbroken(String.format(Locale.ROOT, "%.0f minutes", Math.floor(minutes)));
        }
        return Wrapping.unbroken(PlainNumber.of(Math.floor(minutes / 6) / 10) + " hours");
    }

    /** Until something happens: {@code 2 h 10 min}, {@code 35 min}. */
    static String hoursAndMinutes(Duration span) {
        long minutes = Math.round(span.toSeconds() / 60.0);
        return Wrapping.unbroken((minutes < 60 ? "" : minutes / 60 + " h ") + minutes % 60 + " min");
    }

    /** Minutes of work ahead, no finer than they can be estimated: {@code 1 minute}, {@code 6 minutes}. */
    public static String about(double minutes) {
        long whole = Math.max(1, Math.round(minutes));
        return Wrapping.unbroken(whole + (whole == 1 ? " minute" : " minutes"));
    }
}
