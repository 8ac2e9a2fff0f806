package polewright.cli;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * Whether an event seems to belong to the time at which it is logged; a note, never a refusal, because a night may be
 * entered afterwards.
 */
final class EntryTimeCheck {
    private static final Duration LONGEST_NIGHT = Duration.ofHours(20);
    // Between two events of one night: a longer gap means that the clock jumped or another night has begun.
    private static final Duration LONGEST_PAUSE = Duration.ofHours(12);
    // Possible error of a watch, or of the computer's clock.
    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(2);

    private EntryTimeCheck() {}

    /**
     * Notes about the time of an event.
     *
     * @param given the time that was typed with it, if any
     */
    static List<String> notes(NightState before, NightEvent event, Optional<Instant> given, Instant now) {
        List<String> notes = new ArrayList<>();
        Instant begunAt = before.standing().get(0).at();
        Instant happened = given.orElse(now);
        Optional<LoggedEvent> longBefore = given.isPresent() || event instanceof NightEvent.Revision
                ? Optional.empty()
                : latest(before).filter(last -> now.isAfter(last.at().plus(LONGEST_PAUSE)));
        if (longBefore.isPresent()) {
            notes.add(afterLongPause(longBefore.get(), before, now));
        } else if (Duration.between(begunAt, happened).compareTo(LONGEST_NIGHT) > 0) {
            notes.add("NOTE  this night began at " + minute(begunAt)
                    + ". If tonight is a new night, undo this and type polewright begin.");
        }
        if (given.isPresent() && given.get().isAfter(now.plus(CLOCKS_DIFFER))) {
            notes.add("NOTE  " + minute(given.get()) + " is in the future (it is " + minute(now)
                    + "): check the date and the zone.");
        }
        if (given.isEmpty() && !(event instanceof NightEvent.Revision)) {
            latest(before)
                    .filter(last -> now.isBefore(last.at().minus(CLOCKS_DIFFER)))
                    .ifPresent(last -> notes.add(clockSetBack(last, now)));
        }
        if (given.isPresent() && !(event instanceof NightEvent.Measurement)) {
            lastEvent(before)
                    .filter(last -> given.get().isBefore(happened(last).minus(CLOCKS_DIFFER)))
                    .ifPresent(last ->
                            notes.add("NOTE  treated as done after #" + last.seq() + " (" + minute(happened(last))
                                    + "), because it was logged later. The time you gave is earlier."));
        }
        if (given.isPresent() && event instanceof NightEvent.Measurement measured) {
            lastMove(before)
                    .filter(move -> isBefore(measured, move))
                    .ifPresent(move -> notes.add("NOTE  treated as seen after #" + move.seq() + " moved the axis ("
                            + minute(move.at()) + "), because it was logged later. The time you gave is earlier."));
        }
        return notes;
    }

    /** A clock that was set forward looks just like the next night. */
    private static String afterLongPause(LoggedEvent last, NightState before, Instant now) {
        Duration pause = Duration.between(last.at(), now);
        return "NOTE  this is " + pause.toHours() + " hours after #" + last.seq() + " (" + minute(last.at())
                + "). If tonight is another night, undo this and type polewright begin. If the computer's"
                + " clock was ahead, set it right, then subtract the difference: polewright retime "
                + (newest(before) + 1) + " --add=-MINUTES.";
    }

    /** Either it was fast before, or it is slow now; only the user can see which. */
    private static String clockSetBack(LoggedEvent last, Instant now) {
        long minutes = Math.round(Duration.between(now, last.at()).toSeconds() / 60.0);
        return "NOTE  the computer's clock says " + minute(now) + ", yet #" + last.seq() + " was logged at "
                + minute(last.at()) + ". It has been set back by " + minutes
                + " minutes or more. If it was ahead, subtract " + minutes + " minutes from everything up to #"
                + last.seq() + ": polewright retime FIRST " + last.seq() + " --add=-" + minutes
                + ". If it is behind now, set it right, then add " + minutes + " minutes from #" + (last.seq() + 1)
                + " on: polewright retime " + (last.seq() + 1) + " --add " + minutes + ".";
    }

    /** The event with the latest time, the last of several; not necessarily the last of the night. */
    private static Optional<LoggedEvent> latest(NightState night) {
        return night.standing().stream().reduce((one, next) -> next.at().isBefore(one.at()) ? one : next);
    }

    private static long newest(NightState night) {
        return night.standing().stream().mapToLong(LoggedEvent::seq).max().orElse(0);
    }

    private static boolean isBefore(NightEvent.Measurement measured, LoggedEvent move) {
        return measured.seenAt().isBefore(move.at().minus(CLOCKS_DIFFER));
    }

    private static Instant minute(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MINUTES);
    }

    /** A measurement may be logged long after it was made. */
    private static Instant happened(LoggedEvent logged) {
        return logged.event() instanceof NightEvent.Measurement measured ? measured.seenAt() : logged.at();
    }

    private static Optional<LoggedEvent> lastEvent(NightState night) {
        return night.standing().stream().reduce((earlier, later) -> later);
    }

    private static Optional<LoggedEvent> lastMove(NightState night) {
        return night.standing().stream()
                .filter(logged -> logged.event() instanceof NightEvent.MountMove)
                .reduce((earlier, later) -> later);
    }
}
