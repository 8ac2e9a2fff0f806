package polewright.session;

import java.util.ArrayList;
import java.util.List;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;

/** Inserts turns that were not logged at the time where they belong. */
final class UnloggedTurns {
    private UnloggedTurns() {}

    /**
     * The events in the order in which they happened; turns whose preceding event was withdrawn follow the one before
     * it.
     */
    static List<LoggedEvent> inPlace(List<LoggedEvent> events) {
        if (events.stream().noneMatch(logged -> logged.event() instanceof Correction.TurnNotLogged)) {
            return events;
        }
        List<LoggedEvent> all = new ArrayList<>(events);
        all.removeIf(logged -> logged.event() instanceof Correction.TurnNotLogged);
        for (LoggedEvent logged : events) {
            if (logged.event() instanceof Correction.TurnNotLogged unlogged) {
                int index = after(unlogged.seq(), all);
                all.add(index, new LoggedEvent(logged.seq(), all.get(index - 1).at(), unlogged));
            }
        }
        return all;
    }

    private static int after(long seq, List<LoggedEvent> events) {
        int index = 1;
        for (int i = 1; i < events.size(); i++) {
            if (!(events.get(i).event() instanceof Correction.TurnNotLogged)
                    && events.get(i).seq() <= seq) {
                index = i + 1;
            }
        }
        return index;
    }
}
