package polewright.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * Whether an event seems to belong to the time at which it is logged. A finding is worth a note, but is never a
 * reason to refuse the event, because a night may be entered afterwards.
 */
public final class EntryTimeCheck {
    private static final Duration LONGEST_NIGHT = Duration.ofHours(20);
    // Between two events of one night: a longer gap means that the clock jumped or another night has begun.
    private static final Duration LONGEST_PAUSE = Duration.ofHours(12);
    // Possible error of a watch, or of the computer's clock.
    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(2);

    private EntryTimeCheck() {}

    /** Something odd about the time of an event. */
    public sealed interface Finding {
        /** Calls the visitor's method for this finding. */
        <R> R accept(Visitor<R> visitor);
    }

    /**
     * What terminal or page says about each finding.
     *
     * @param <R> the result
     */
    public interface Visitor<R> {
        R longPause(LongPause finding);

        R oldNight(OldNight finding);

        R inFuture(InFuture finding);

        R clockSetBack(ClockSetBack finding);

        R beforeAnotherEvent(BeforeAnotherEvent finding);

        R beforeAMove(BeforeAMove finding);
    }

    /**
     * Hours after the last event: a clock that was set forward looks just like the next night.
     *
     * @param last the latest event before it
     * @param next the number of the event itself
     */
    public record LongPause(LoggedEvent last, Duration pause, long next) implements Finding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.longPause(this);
        }
    }

    /** The night began longer ago than any night lasts. */
    public record OldNight(Instant begunAt) implements Finding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.oldNight(this);
        }
    }

    /** The given time is in the future. */
    public record InFuture(Instant given, Instant now) implements Finding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.inFuture(this);
        }
    }

    /**
     * The clock is behind the last event: either it was fast before, or it is slow now; only the user can see which.
     *
     * @param last the latest event before it
     */
    public record ClockSetBack(LoggedEvent last, Instant now) implements Finding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.clockSetBack(this);
        }

        /** The least by which it was set back, in minutes. */
        public long minutes() {
            return Math.round(Duration.between(now, last.at()).toSeconds() / 60.0);
        }
    }

    /** The time given is before that of an event logged earlier, after which it counts as done. */
    public record BeforeAnotherEvent(long seq, Instant at) implements Finding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.beforeAnotherEvent(this);
        }
    }

    /** The time given is before the axis was moved, after which it counts as seen. */
    public record BeforeAMove(long seq, Instant at) implements Finding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.beforeAMove(this);
        }
    }

    /**
     * What is odd about the time of an event.
     *
     * @param given the time that was typed with it, if any
     */
    public static List<Finding> of(NightState before, NightEvent event, Optional<Instant> given, Instant now) {
        List<Finding> found = new ArrayList<>();
        Instant begunAt = before.standing().get(0).at();
        Instant happened = given.orElse(now);
        Optional<LoggedEvent> longBefore = given.isPresent() || event instanceof NightEvent.Revision
                ? Optional.empty()
                : latest(before).filter(last -> now.isAfter(last.at().plus(LONGEST_PAUSE)));
        if (longBefore.isPresent()) {
            LoggedEvent last = longBefore.get();
            found.add(new LongPause(last, Duration.between(last.at(), now), newest(before) + 1));
        } else if (Duration.between(begunAt, happened).compareTo(LONGEST_NIGHT) > 0) {
            found.add(new OldNight(begunAt));
        }
        given.filter(time -> time.isAfter(now.plus(CLOCKS_DIFFER)))
                .ifPresent(time -> found.add(new InFuture(time, now)));
        if (given.isEmpty() && !(event instanceof NightEvent.Revision)) {
            latest(before)
                    .filter(last -> now.isBefore(last.at().minus(CLOCKS_DIFFER)))
                    .ifPresent(last -> found.add(new ClockSetBack(last, now)));
        }
        given.ifPresent(time -> found.addAll(before(before, event, time)));
        return found;
    }

    private static List<Finding> before(NightState night, NightEvent event, Instant given) {
        if (event instanceof NightEvent.Measurement measured) {
            return lastMove(night)
                    .filter(move -> measured.seenAt().isBefore(move.at().minus(CLOCKS_DIFFER)))
                    .<Finding>map(move -> new BeforeAMove(move.seq(), move.at()))
                    .stream()
                    .toList();
        }
        return lastEvent(night)
                .filter(last -> given.isBefore(happened(last).minus(CLOCKS_DIFFER)))
                .<Finding>map(last -> new BeforeAnotherEvent(last.seq(), happened(last)))
                .stream()
                .toList();
    }

    /** The event with the latest time, the last of several; not necessarily the last of the night. */
    private static Optional<LoggedEvent> latest(NightState night) {
        return night.standing().stream().reduce((one, next) -> next.at().isBefore(one.at()) ? one : next);
    }

    private static long newest(NightState night) {
        return night.standing().stream().mapToLong(LoggedEvent::seq).max().orElse(0);
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
