package polewright.report.text;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import polewright.alignment.fix.Agreement;
import polewright.mount.OffsetCovariance;
import polewright.planning.seasons.AxisAtTime;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.NightRecord;
import polewright.sky.angle.Angle;

/** Two nights side by side, in words. */
public final class CompareWords {
    private static final DateTimeFormatter BEGUN = DateTimeFormatter.ofPattern(
                    "d MMM yyyy, HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);
    private static final int LABEL = 14;
    private static final int CELL = 31;

    private CompareWords() {}

    /**
     * One property of both nights.
     *
     * @param label its name
     */
    public record Row(String label, String earlier, String later) {}

    /** Row by row; the first identifies the nights. */
    public static List<Row> rows(NightRecord earlier, NightRecord later) {
        return List.of(
                row("", CompareWords::name, earlier, later),
                row("begun", night -> BEGUN.format(night.begunAt()), earlier, later),
                row("site", night -> night.begun().siteName(), earlier, later),
                row("rig", night -> night.begun().rig().name(), earlier, later),
                row("found", night -> axis(night.axisAtStart()), earlier, later),
                row("sightings", CompareWords::sightings, earlier, later),
                row("contradicting", CompareWords::contradictions, earlier, later),
                row("turns", CompareWords::turns, earlier, later),
                row("left", night -> axis(night.axisAtEnd()), earlier, later),
                row("time taken", CompareWords::taken, earlier, later));
    }

    private static Row row(String label, Function<NightRecord, String> words, NightRecord earlier, NightRecord later) {
        return new Row(label, words.apply(earlier), words.apply(later));
    }

    /** Three columns, 80 characters wide at most. */
    public static List<String> table(NightRecord earlier, NightRecord later) {
        List<String> lines = new ArrayList<>();
        rows(earlier, later).forEach(row -> add(lines, row));
        lines.add("");
        return lines;
    }

    /** How the axis changed between them. */
    public static List<String> between(NightGap gap) {
        return List.of(gap.accept(new Between()));
    }

    private static String days(NightGap.Drifted drifted) {
        long days = Math.round(drifted.duration().toHours() / 24.0);
        return days < 1 ? "less than a day" : days + (days == 1 ? " day" : " days");
    }

    private static String name(NightRecord night) {
        return "night " + night.id().number();
    }

    private static String axis(Optional<AxisAtTime> then) {
        return then.map(t -> FixWords.withUncertainty(t.offset(), t.covariance()))
                .orElse("not known");
    }

    private static String plusMinus(OffsetCovariance covariance) {
        String east = sigma(covariance.sigmaEast());
        String up = sigma(covariance.sigmaUp());
        return FixWords.plusMinus(east, up);
    }

    private static String sigma(Angle sigma) {
        return sigma.arcminutes() < 0.05 ? "0.1′" : AngleWords.size(sigma);
    }

    private static String sightings(NightRecord night) {
        return night.sightings().isEmpty()
                ? "none"
                : night.sightings().entrySet().stream()
                        .map(kind ->
                                EventWords.kind(kind.getKey()) + (kind.getValue() == 1 ? "" : " × " + kind.getValue()))
                        .collect(Collectors.joining(", "));
    }

    private static String contradictions(NightRecord night) {
        return night.contradictions().isEmpty()
                ? "none"
                : night.contradictions().stream()
                        .map(CompareWords::contradiction)
                        .collect(Collectors.joining("; "));
    }

    private static String contradiction(Agreement agreement) {
        return "#" + agreement.seq() + " " + EventWords.kind(agreement.kind())
                + agreement
                        .likelyCause()
                        .map(cause -> " (would fit if " + cause + ")")
                        .orElse("");
    }

    private static String turns(NightRecord night) {
        return switch (night.turns()) {
            case 0 -> "none";
            case 1 -> "once";
            default -> night.turns() + " times";
        };
    }

    private static String taken(NightRecord night) {
        long minutes = SeasonsWords.minutes(night);
        String words = minutes + (minutes == 1 ? " minute" : " minutes");
        return night.isStopped() ? words + " to 'stop'" : words + " to the last event; 'stop' was not reached";
    }

    private static void add(List<String> lines, Row row) {
        List<String> first = wrapped(row.earlier());
        List<String> second = wrapped(row.later());
        for (int i = 0; i < Math.max(first.size(), second.size()); i++) {
            lines.add(String.format(
                            Locale.ROOT,
                            "%-" + LABEL + "s %-" + CELL + "s  %s",
                            i == 0 ? row.label() : "",
                            i < first.size() ? first.get(i) : "",
                            i < second.size() ? second.get(i) : "")
                    .stripTrailing());
        }
    }

    /** Wrapped between words to fit a cell; a longer word is split at the cell's edge. */
    private static List<String> wrapped(String text) {
        List<String> lines = new ArrayList<>();
        String rest = text.replace('\u00a0', ' ').replaceAll("\\s+", " ").strip();
        while (rest.length() > CELL) {
            int space = rest.lastIndexOf(' ', CELL);
            int end = space > 0 ? space : CELL;
            lines.add(rest.substring(0, end));
            rest = rest.substring(end).strip();
        }
        lines.add(rest);
        return lines;
    }

    private static final class Between implements NightGap.Visitor<String> {
        @Override
        public String drifted(NightGap.Drifted gap) {
            return "Between them, in " + days(gap) + ", the axis moved " + MotionWords.way(gap.drift()) + " ("
                    + plusMinus(gap.covariance()) + "), "
                    + (gap.isSignificant()
                            ? "more than the sightings' uncertainty. If the mount stayed where it was, the pier or"
                                    + " wedge moved."
                            : "within the sightings' uncertainty.");
        }

        @Override
        public String setDownAgain(NightGap.SetDownAgain gap) {
            return "Between them the axis moved " + MotionWords.way(gap.by())
                    + ", farther than a pier or wedge moves by itself, so the mount was set down again.";
        }

        @Override
        public String notKnown(NightGap.NotKnown gap) {
            return "The motion of the axis between them is not known. " + gap.reason() + ".";
        }
    }
}
