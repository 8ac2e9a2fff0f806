package polewright.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * The events that count: those not withdrawn, or whose withdrawal was itself withdrawn; turns as they were corrected.
 *
 * @param asLogged them all in their order, corrections too, as they were logged; withdrawals left out
 * @param setupHistory how rig and site were corrected, and what was withdrawn, in order, the beginning first: by which of them an
 *     event was entered depends on what stood then
 */
public record StandingEvents(List<LoggedEvent> asLogged, List<LoggedEvent> setupHistory) {
    public StandingEvents {
        asLogged = List.copyOf(asLogged);
        setupHistory = List.copyOf(setupHistory);
    }

    /** Those of a night's events that count; an event is withdrawn only by a later one. */
    public static StandingEvents among(List<LoggedEvent> events) {
        return new StandingEvents(counting(events), SetupCorrections.history(events));
    }

    static List<LoggedEvent> counting(List<LoggedEvent> events) {
        Set<Long> withdrawn = new HashSet<>();
        List<LoggedEvent> counting = new ArrayList<>();
        for (int i = events.size() - 1; i >= 0; i--) {
            LoggedEvent logged = events.get(i);
            if (!withdrawn.isEmpty() && withdrawn.contains(logged.seq())) {
                continue;
            }
            if (logged.event() instanceof NightEvent.Withdrawn withdrawal) {
                withdrawn.add(withdrawal.seq());
            } else {
                counting.add(logged);
            }
        }
        Collections.reverse(counting);
        return counting;
    }

    /** Whether an event says something of events before it, so that they may count otherwise. */
    static boolean changesOthers(NightEvent event) {
        return event instanceof NightEvent.Revision;
    }

    /**
     * What happened, in order: the beginning with rig and site as they were corrected last; each turn and each measurement as
     * it was corrected last, where it was made; times as they were, where the clock was off; corrections themselves left out.
     *
     * @throws InputRefused when something is corrected that cannot be
     */
    public List<LoggedEvent> asMeant() {
        return UnloggedTurns.inPlace(
                ClockCorrections.applied(ReplacedEvents.applied(SetupCorrections.applied(asLogged, setupHistory))));
    }

    /** How a night began, with rig and site as they were corrected last; empty if it has no beginning. */
    public static Optional<NightEvent.Begun> beginning(List<LoggedEvent> events) {
        return among(events).asMeant().stream()
                .findFirst()
                .map(LoggedEvent::event)
                .filter(NightEvent.Begun.class::isInstance)
                .map(NightEvent.Begun.class::cast);
    }

    /** Which turns and measurements were corrected, and by which event last; both by number. */
    public Map<Long, Long> replacements() {
        Map<Long, Long> by = new HashMap<>();
        for (LoggedEvent logged : asLogged) {
            if (logged.event() instanceof NightEvent.TurnCorrected
                    || logged.event() instanceof NightEvent.MeasurementCorrected) {
                by.put(((NightEvent.Revision) logged.event()).seq(), logged.seq());
            }
        }
        return by;
    }

    /** Whether the event of this number counts. */
    public boolean has(long seq) {
        int low = 0;
        int high = asLogged.size() - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            long found = asLogged.get(middle).seq();
            if (found == seq) {
                return true;
            } else if (found < seq) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return false;
    }

    /** The last event that {@code undo} would take back, if any: not the beginning. */
    public Optional<LoggedEvent> lastUndoable() {
        return asLogged.size() > 1 ? Optional.of(asLogged.get(asLogged.size() - 1)) : Optional.empty();
    }
}
