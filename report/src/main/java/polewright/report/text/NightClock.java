package polewright.report.text;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import polewright.sky.time.Interval;

/**
 * The times of one night as shown on a watch: local, to the nearest minute, with the zone, and marked if they are on
 * another day than the beginning of the night.
 */
final class NightClock {
    private static final DateTimeFormatter MINUTES = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEEE", Locale.ENGLISH);
    private static final DateTimeFormatter ABBREVIATION = DateTimeFormatter.ofPattern("zzz", Locale.ENGLISH);
    private static final int HALF_A_MINUTE_SECONDS = 30;

    private final ZoneId zone;
    private final LocalDate firstDay;
    private final boolean zoneChanges;

    /** @param night its local day at the beginning needs no mark */
    NightClock(ZoneId zone, Interval night) {
        this.zone = zone;
        this.firstDay = local(night.from()).toLocalDate();
        this.zoneChanges =
                !local(night.from()).getOffset().equals(local(night.to()).getOffset());
    }

    /** {@code 16:02 GMT}: for a list that gives the day itself. */
    String withZone(Instant at) {
        ZonedDateTime local = local(at);
        return Wrapping.unbroken(MINUTES.format(local) + " " + zoneOf(local));
    }

    /** {@code 16:02}, {@code 01:12 (Sunday)}; with the zone on nights when the clocks change. */
    String inSentence(Instant at) {
        String time = zoneChanges ? withZone(at) : MINUTES.format(local(at));
        return Wrapping.unbroken(time + dayMark(at));
    }

    /** {@code 01:12 to 05:40 (Sunday)}: the day is given once if it applies to both. */
    String span(Interval interval) {
        boolean sameDay = dayMark(interval.from()).equals(dayMark(interval.to()));
        String from = zoneChanges ? withZone(interval.from()) : MINUTES.format(local(interval.from()));
        return (sameDay ? from : inSentence(interval.from())) + " to " + inSentence(interval.to());
    }

    /** {@code Friday 20 November 2026}. */
    String day(Instant at) {
        return DAY.format(local(at));
    }

    /** The local date of an instant. */
    LocalDate date(Instant at) {
        return local(at).toLocalDate();
    }

    /** {@code GMT}, {@code NZDT}; {@code UTC+05:45} if there is no abbreviation. */
    String zoneAt(Instant at) {
        return zoneOf(local(at));
    }

    boolean zoneChanges() {
        return zoneChanges;
    }

    private String dayMark(Instant at) {
        long days = ChronoUnit.DAYS.between(firstDay, date(at));
        if (days == 0) {
            return "";
        }
        return days == 1 ? " (" + WEEKDAY.format(local(at)) + ")" : " on " + DAY.format(local(at));
    }

    /** Rounded before conversion to local time, so that 23:59:59 is 00:00 of the next day. */
    private ZonedDateTime local(Instant at) {
        return at.plusSeconds(HALF_A_MINUTE_SECONDS)
                .truncatedTo(ChronoUnit.MINUTES)
                .atZone(zone);
    }

    private static String zoneOf(ZonedDateTime local) {
        if (local.getOffset().getTotalSeconds() == 0
                && local.getZone().normalized().equals(local.getOffset())) {
            return "UTC";
        }
        String letters = ABBREVIATION.format(local);
        return letters.chars().allMatch(Character::isLetter) ? letters : "UTC" + local.getOffset();
    }
}
