package polewright.operations.sighting;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.Sighting;
import polewright.drawing.sighting.SightingSketch;
import polewright.operations.action.Action;
import polewright.operations.action.Entries;
import polewright.session.event.NightEvent;

/** How one kind of sighting is entered. */
public interface SightingEntry {
    /** The action that logs it. */
    Action action();

    /** The kinds of advice that it answers, the usual one first; empty if it is never advised. */
    default List<SightingKind> answers() {
        return List.of();
    }

    /**
     * The arguments with which a logged sighting was entered, so that it can be corrected. The usual uncertainty is left
     * out.
     *
     * @return empty if it is of another kind
     */
    Optional<Map<String, String>> typed(Sighting logged);

    /**
     * What to look for and what to measure, with the entries so far. Missing entries are replaced by an example: the
     * reading for a well-aligned axis, or a usual value.
     *
     * @throws polewright.sky.InputRefused if it cannot be drawn
     */
    SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now);
}
