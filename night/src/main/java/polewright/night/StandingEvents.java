package polewright.night;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * The events that count: those not withdrawn, or whose withdrawal was itself withdrawn; turns as they were corrected.
 *
 * @param asLogged them all, corrections too, as they were logged; withdrawals left out
 */
public record StandingEvents(List<LoggedEvent> asLogged) {
    public StandingEvents {
        asLogged = List.copyOf(asLogged);
    }

    public static StandingEvents among(List<LoggedEvent> events) {
        Map<Long, Set<Long>> withdrawnBy = new HashMap<>();
        for (LoggedEvent logged : events) {
            if (logged.event() instanceof NightEvent.Withdrawn withdrawn) {
                withdrawnBy
                        .computeIfAbsent(withdrawn.seq(), s -> new HashSet<>())
                        .add(logged.seq());
            }
        }
        return new StandingEvents(events.stream()
                .filter(e -> !(e.event() instanceof NightEvent.Withdrawn) && stands(e.seq(), withdrawnBy))
                .toList());
    }

    /**
     * What happened, in order: each turn as it was corrected last, where it was made; times as they were, where the clock was
     * off; corrections themselves left out.
     *
     * @throws InputRefused when something is corrected that is no turn
     */
    public List<LoggedEvent> asMeant() {
        Map<Long, NightEvent.ScrewsTurned> meant = new HashMap<>();
        for (LoggedEvent logged : asLogged) {
            if (logged.event() instanceof NightEvent.TurnCorrected corrected) {
                meant.put(corrected.seq(), corrected.meant());
            }
        }
        return ClockCorrections.applied(asLogged.stream()
                .filter(e -> !(e.event() instanceof NightEvent.TurnCorrected))
                .map(e -> meant.containsKey(e.seq()) ? corrected(e, meant.get(e.seq())) : e)
                .toList());
    }

    /** Whether the event of this number counts. */
    public boolean has(long seq) {
        return asLogged.stream().anyMatch(e -> e.seq() == seq);
    }

    /** The last event that {@code undo} would take back, if any: not the beginning. */
    public Optional<LoggedEvent> lastUndoable() {
        return asLogged.size() > 1 ? Optional.of(asLogged.get(asLogged.size() - 1)) : Optional.empty();
    }

    private static LoggedEvent corrected(LoggedEvent logged, NightEvent.ScrewsTurned meant) {
        if (!(logged.event() instanceof NightEvent.ScrewsTurned)) {
            throw new InputRefused(
                    "event " + logged.seq() + " is no turn of screws, so no other turn can stand in its place",
                    "name the number of a turn, as polewright log shows it");
        }
        return new LoggedEvent(logged.seq(), logged.at(), meant);
    }

    private static boolean stands(long seq, Map<Long, Set<Long>> withdrawnBy) {
        return withdrawnBy.getOrDefault(seq, Set.of()).stream().noneMatch(by -> stands(by, withdrawnBy));
    }
}
