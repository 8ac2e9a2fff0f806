package polewright.app.text;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.axis.OffsetCovariance;
import polewright.axis.fix.Agreement;
import polewright.night.seasons.AxisThen;
import polewright.night.seasons.NightGap;
import polewright.night.seasons.NightRecord;
import polewright.sky.angle.Angle;

/** Two nights side by side, in words. */
public final class CompareWords {
    private static final DateTimeFormatter BEGUN = DateTimeFormatter.ofPattern(
                    "d MMM yyyy, HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);
    private static final int LABEL = 14;
    private static final int CELL = 31;

    private CompareWords() {}

    /** Three columns, 80 characters wide at the most. */
    public static List<String> table(NightRecord earlier, NightRecord later) {
        List<String> lines = new ArrayList<>();
        add(lines, "", name(earlier), name(later));
        add(lines, "begun", BEGUN.format(earlier.begunAt()), BEGUN.format(later.begunAt()));
        add(lines, "site", earlier.begun().siteName(), later.begun().siteName());
        add(lines, "rig", earlier.begun().rig().name(), later.begun().rig().name());
        add(lines, "found", axis(earlier.found()), axis(later.found()));
        add(lines, "sightings", sightings(earlier), sightings(later));
        add(lines, "contradicting", contradictions(earlier), contradictions(later));
        add(lines, "turns", turns(earlier), turns(later));
        add(lines, "left", axis(earlier.left()), axis(later.left()));
        add(lines, "time taken", taken(earlier), taken(later));
        lines.add("");
        return lines;
    }

    /** What became of the axis between them. */
    public static List<String> between(NightGap gap) {
        if (gap instanceof NightGap.NotKnown unknown) {
            return List.of("How the axis went between them cannot be told. " + unknown.reason() + ".");
        }
        if (gap instanceof NightGap.SetDownAnew anew) {
            return List.of("Between them the axis went " + MotionWords.way(anew.by())
                    + ", farther than a pier or wedge moves by itself: the mount was set down anew.");
        }
        NightGap.Drifted drifted = (NightGap.Drifted) gap;
        String went = "Between them, in " + days(drifted) + ", the axis went " + MotionWords.way(drifted.drift()) + ", "
                + giveOrTake(drifted.covariance()) + ": ";
        return List.of(went
                + (drifted.isMoreThanUncertainty()
                        ? "more than the sightings' uncertainty explains. If the mount stayed where it was, pier or"
                                + " wedge moved."
                        : "no more than the sightings' uncertainty explains."));
    }

    private static String days(NightGap.Drifted drifted) {
        long days = Math.round(drifted.over().toHours() / 24.0);
        return days < 1 ? "less than a day" : days + (days == 1 ? " day" : " days");
    }

    private static String name(NightRecord night) {
        return "night " + night.id().number();
    }

    private static String axis(Optional<AxisThen> then) {
        return then.map(t -> FixWords.direction(t.offset()) + ", " + giveOrTake(t.covariance()))
                .orElse("not known");
    }

    private static String giveOrTake(OffsetCovariance covariance) {
        String east = sigma(covariance.sigmaEast());
        String up = sigma(covariance.sigmaUp());
        return "give or take " + (east.equals(up) ? east : east + " and " + up);
    }

    private static String sigma(Angle sigma) {
        return sigma.arcminutes() < 0.05 ? "under 0.1′" : AngleWords.size(sigma);
    }

    private static String sightings(NightRecord night) {
        return night.sightings().isEmpty()
                ? "none"
                : night.sightings().entrySet().stream()
                        .map(kind -> kind.getKey() + (kind.getValue() == 1 ? "" : " × " + kind.getValue()))
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
        return "#" + agreement.seq() + " " + agreement.kind()
                + agreement
                        .likelyCause()
                        .map(cause -> " (fits if " + cause + ")")
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

    private static void add(List<String> lines, String label, String left, String right) {
        List<String> first = wrapped(left);
        List<String> second = wrapped(right);
        for (int i = 0; i < Math.max(first.size(), second.size()); i++) {
            lines.add(String.format(
                            Locale.ROOT,
                            "%-" + LABEL + "s %-" + CELL + "s  %s",
                            i == 0 ? label : "",
                            i < first.size() ? first.get(i) : "",
                            i < second.size() ? second.get(i) : "")
                    .stripTrailing());
        }
    }

    /** Broken between words to fit a cell; a longer word is cut where the cell ends. */
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
}
