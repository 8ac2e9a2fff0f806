package polewright.report.text;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.mount.AxisOffset;
import polewright.operations.seasons.LoggedNights;
import polewright.planning.seasons.AxisAtTime;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.NightRecord;
import polewright.planning.seasons.Seasons;

/** A list of nights, and the movement of pier and wedge, in words. */
public final class SeasonsWords {
    private static final DateTimeFormatter DATE =
            DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final String UNKNOWN = "-";

    private SeasonsWords() {}

    /** A line for each night, 80 characters wide at most. */
    public static List<String> table(Seasons seasons) {
        List<String> lines = new ArrayList<>();
        if (seasons.nights().isEmpty()) {
            return lines;
        }
        lines.add(String.format(Locale.ROOT, "%19s%14s    %14s  %14s", "", "drift", "found", "left"));
        lines.add(String.format(
                Locale.ROOT,
                "%5s  %-10s  %7s%7s    %7s%7s  %7s%7s  %5s  %3s",
                "night",
                "date",
                "east",
                "up",
                "east",
                "up",
                "east",
                "up",
                "turns",
                "min"));
        seasons.nights().forEach(night -> lines.add(line(night, gapBefore(seasons, night))));
        lines.add("");
        return lines;
    }

    /** What the table means, and what follows from it. */
    public static List<String> of(Seasons seasons) {
        List<String> lines = new ArrayList<>();
        if (!seasons.nights().isEmpty()) {
            lines.add("Arcminutes from the pole on the sky, east and up positive. Drift: from where the last"
                    + " night left the axis to where this one found it"
                    + (isAnyDrift(seasons) ? ", * where that exceeds the sightings' uncertainty" : "")
                    + ". Min: minutes to 'stop', or to the last event.");
        }
        lines.addAll(conclusions(seasons));
        return lines;
    }

    /** The movement of pier and wedge, and where the sequence of nights is broken. */
    public static List<String> conclusions(Seasons seasons) {
        List<String> lines = new ArrayList<>();
        if (seasons instanceof Seasons.Compared compared) {
            compared.gaps().forEach(gap -> gap.accept(new Broken()).ifPresent(lines::add));
            lines.addAll(MotionWords.of(compared.motion()));
        } else if (seasons instanceof Seasons.TooFew few) {
            lines.add(few.missing() + ".");
        }
        return lines;
    }

    /** A sentence for each night, the latest first: where a table is too wide. */
    public static List<String> nights(Seasons seasons) {
        List<String> lines = new ArrayList<>();
        seasons.nights().forEach(night -> lines.add(sentence(night, gapBefore(seasons, night))));
        Collections.reverse(lines);
        return lines;
    }

    /** Which nights were left out, if any. */
    public static List<String> leftOut(LoggedNights nights) {
        return nights.unreadable().stream()
                .map(night -> "NOTE  Night " + night.number()
                        + " cannot be evaluated and is left out; it is unchanged in the log.")
                .toList();
    }

    private static String sentence(NightRecord night, Optional<NightGap> before) {
        String drift = before.filter(NightGap.Drifted.class::isInstance)
                .map(NightGap.Drifted.class::cast)
                .map(gap -> " Since the last night it had moved " + MotionWords.way(gap.drift())
                        + (gap.isSignificant() ? "." : ", which is within the uncertainty."))
                .orElse("");
        String turns = night.turns() == 0 ? "" : night.turns() == 1 ? " 1 turn." : " " + night.turns() + " turns.";
        String name = "Night " + night.id().number() + ", " + DATE.format(night.begunAt()) + ": ";
        if (night.axisAtStart().isEmpty() && night.axisAtEnd().isEmpty()) {
            return name + "no fix." + turns;
        }
        return name + "found " + where(night.axisAtStart()) + "." + drift + turns + " Left " + where(night.axisAtEnd())
                + " after " + minutes(night) + (minutes(night) == 1 ? " minute." : " minutes.");
    }

    private static String where(Optional<AxisAtTime> then) {
        return then.map(t -> FixWords.direction(t.offset())).orElse("without a fix");
    }

    private static boolean isAnyDrift(Seasons seasons) {
        return seasons instanceof Seasons.Compared compared
                && compared.gaps().stream().anyMatch(NightGap.Drifted.class::isInstance);
    }

    private static Optional<NightGap> gapBefore(Seasons seasons, NightRecord night) {
        return seasons instanceof Seasons.Compared compared
                ? compared.gaps().stream()
                        .filter(gap -> gap.to().id().equals(night.id()))
                        .findFirst()
                : Optional.empty();
    }

    private static String line(NightRecord night, Optional<NightGap> before) {
        String drift = before.filter(NightGap.Drifted.class::isInstance)
                .map(NightGap.Drifted.class::cast)
                .map(gap -> pair(gap.drift()) + (gap.isSignificant() ? " *" : "  "))
                .orElseGet(() -> before.map(gap -> gap instanceof NightGap.SetDownAgain ? "  set down again" : null)
                        .orElse(none() + "  "));
        return String.format(
                Locale.ROOT,
                "%5d  %s  %s  %s  %s  %5d  %3d",
                night.id().number(),
                DATE.format(night.begunAt()),
                drift,
                pair(night.axisAtStart()),
                pair(night.axisAtEnd()),
                night.turns(),
                minutes(night));
    }

    static long minutes(NightRecord night) {
        return Math.round(night.taken().toSeconds() / 60.0);
    }

    private static String pair(Optional<AxisAtTime> then) {
        return then.map(t -> pair(t.offset())).orElse(none());
    }

    private static String pair(AxisOffset offset) {
        return figure(offset.east().arcminutes()) + figure(offset.up().arcminutes());
    }

    private static String none() {
        return String.format(Locale.ROOT, "%7s%7s", UNKNOWN, UNKNOWN);
    }

    private static String figure(double arcmin) {
        // Adding zero turns a rounded -0.0 into 0.0.
        return Math.abs(arcmin) < 99.95
                ? String.format(Locale.ROOT, "%7.1f", Math.rint(arcmin * 10) / 10 + 0.0)
                : String.format(Locale.ROOT, "%7.0f", arcmin);
    }

    /** Why a gap does not count; empty for a drift. */
    private static final class Broken implements NightGap.Visitor<Optional<String>> {
        @Override
        public Optional<String> drifted(NightGap.Drifted gap) {
            return Optional.empty();
        }

        @Override
        public Optional<String> setDownAgain(NightGap.SetDownAgain gap) {
            return Optional.of("NOTE  Between night " + gap.from().id().number() + " and night "
                    + gap.to().id().number() + " it went "
                    + AngleWords.size(gap.by().distance())
                    + ", farther than a pier moves, so the mount was set down again.");
        }

        @Override
        public Optional<String> notKnown(NightGap.NotKnown gap) {
            return Optional.of("NOTE  " + gap.reason() + ".");
        }
    }
}
