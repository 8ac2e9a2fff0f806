package polewright.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * The standing events: those not withdrawn, or whose withdrawal was itself withdrawn; with turns as corrected.
 *
 * @param asLogged all of them in order as they were logged, including corrections; without withdrawals
 * @param setupHistory corrections of rig and site, and withdrawals, in order, the beginning first: they determine with
 *     which rig and site an event was entered
 */
public record StandingEvents(List<LoggedEvent> asLogged, List<LoggedEvent> setupHistory) {
    public StandingEvents {
        asLogged = List.copyOf(asLogged);
        setupHistory = List.copyOf(setupHistory);
    }

    /** The standing events of a night; an event can only be withdrawn by a later one. */
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

    /** Whether an event refers to earlier events and may change their meaning. */
    static boolean changesOthers(NightEvent event) {
        return event instanceof NightEvent.Revision;
    }

    /**
     * What happened, in order: the beginning with the last corrections of rig and site; each turn and measurement with
     * its last correction, in its original place; times corrected for an error of the clock; without the corrections
     * themselves.
     *
     * @throws InputRefused if something is corrected that cannot be
     */
    public List<LoggedEvent> asMeant() {
        return UnloggedTurns.inPlace(
                ClockCorrections.applied(ReplacedEvents.applied(SetupCorrections.applied(asLogged, setupHistory))));
    }

    /** The beginning of a night, with the last corrections of rig and site; empty if it has none. */
    public static Optional<NightEvent.Begun> beginning(List<LoggedEvent> events) {
        return among(events).asMeant().stream()
                .findFirst()
                .map(LoggedEvent::event)
                .filter(NightEvent.Begun.class::isInstance)
                .map(NightEvent.Begun.class::cast);
    }

    /** The corrected turns and measurements, each with the event that corrected it last; both by number. */
    public Map<Long, Long> replacements() {
        Map<Long, Long> by = new HashMap<>();
        for (LoggedEvent logged : asLogged) {
            if (logged.event() instanceof Correction.Replacement replacement) {
                by.put(replacement.seq(), logged.seq());
            }
        }
        return by;
    }

    /** Whether the event with this number stands. */
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

    /** The last event that {@code undo} would withdraw, if any; never the beginning. */
    public Optional<LoggedEvent> lastUndoable() {
        return asLogged.size() > 1 ? Optional.of(asLogged.get(asLogged.size() - 1)) : Optional.empty();
    }
}
