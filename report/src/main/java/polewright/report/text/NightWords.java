package polewright.report.text;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;

/** A night event by event. */
public final class NightWords {
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("HH:mm").withZone(ZoneOffset.UTC);

    private NightWords() {}

    /**
     * The event, then fix and advice after it, ending with an empty line.
     *
     * @param whole the events of the whole night that are in effect, including later ones
     */
    public static List<String> afterEvent(LoggedEvent event, NightState night, List<LoggedEvent> whole) {
        List<String> lines = new ArrayList<>();
        lines.add(heading(event, EventWords.of(event, whole)));
        FixWords.beforeAdvice(night).forEach(line -> lines.add("  " + line));
        night.fix().agreement(event.seq()).ifPresent(own -> {
            if (own.contradictory()) {
                lines.addAll(FixWords.contradictions(night).stream()
                        .filter(line -> line.contains("#" + event.seq() + " "))
                        .map(line -> "  " + line)
                        .toList());
            }
        });
        lines.add("  " + ZoneWords.chance(night).inTerminal());
        // What to type is omitted: here it has been typed.
        AdviceWords.of(night).stream()
                .takeWhile(line -> line.tag() != Tag.THEN)
                .forEach(line -> lines.add("  " + line.inTerminal()));
        lines.add("");
        return lines;
    }

    static String heading(LoggedEvent event, String words) {
        return "#" + event.seq() + " at " + TIME.format(event.at()) + " UTC: " + words + ".";
    }
}
