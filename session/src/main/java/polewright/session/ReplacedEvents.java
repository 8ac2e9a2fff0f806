package polewright.session;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;

/** Applies the last correction of each turn and measurement, at the place and time of the original. */
final class ReplacedEvents {
    private ReplacedEvents() {}

    /**
     * The corrected events, without the corrections themselves.
     *
     * @param standing the events not withdrawn
     * @throws polewright.sky.InputRefused if the event corrected is not a turn, or not a measurement
     */
    static List<LoggedEvent> applied(List<LoggedEvent> standing) {
        Map<Long, Correction.Replacement> last = new HashMap<>();
        for (LoggedEvent logged : standing) {
            if (logged.event() instanceof Correction.Replacement replacement) {
                last.put(replacement.seq(), replacement);
            }
        }
        if (last.isEmpty()) {
            return standing;
        }
        return standing.stream()
                .filter(logged -> !(logged.event() instanceof Correction.Replacement))
                .map(logged -> last.containsKey(logged.seq()) ? replaced(logged, last.get(logged.seq())) : logged)
                .toList();
    }

    private static LoggedEvent replaced(LoggedEvent logged, Correction.Replacement by) {
        by.requireFits(logged);
        return new LoggedEvent(logged.seq(), logged.at(), by.meant());
    }
}
