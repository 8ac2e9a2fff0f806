package polewright.app.text;

import java.util.List;
import polewright.night.NightState;

/** The one thing to do now, and what to type then: for someone with gloves on. */
public final class NextWords {
    private NextWords() {}

    /** The advice without its reasons. */
    public static List<String> of(NightState night) {
        return AdviceWords.of(night).stream()
                .filter(line -> !line.startsWith("WHY "))
                .toList();
    }
}
