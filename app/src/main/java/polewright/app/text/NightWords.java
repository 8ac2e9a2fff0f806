package polewright.app.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.night.NightState;
import polewright.night.SuggestedStar;
import polewright.night.event.LoggedEvent;

/** A night told event by event. */
public final class NightWords {
    private NightWords() {}

    /** The event, then fix and advice after it, ending with an empty line. */
    public static List<String> afterEvent(LoggedEvent event, NightState night, Optional<SuggestedStar> star) {
        List<String> lines = new ArrayList<>();
        lines.add("#" + event.seq() + " " + EventWords.of(event.event()));
        lines.add("  " + FixWords.line(night));
        night.fix().agreement(event.seq()).ifPresent(own -> {
            if (own.contradictory()) {
                lines.addAll(FixWords.contradictions(night).stream()
                        .filter(line -> line.contains("#" + event.seq() + " "))
                        .map(line -> "  " + line)
                        .toList());
            }
        });
        for (String line : AdviceWords.of(night, star)) {
            if (!line.startsWith("THEN")) {
                lines.add("  " + line);
            }
        }
        lines.add("");
        return lines;
    }
}
