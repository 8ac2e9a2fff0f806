package polewright.operations.action;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import polewright.operations.LogEntry;
import polewright.operations.seasons.EarlierNights;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.store.KnownState;
import polewright.store.LogChanged;
import polewright.store.NightLog;
import polewright.store.Submission;
import polewright.store.SubmissionKey;

/** Adds what a person did to the last night of a log, only once even if it is sent again. */
public final class NightEntry {
    private NightEntry() {}

    /**
     * How an entry was sent.
     *
     * @param once identifies it, so that it can be sent again when its answer was lost
     * @param known what the sender knew of the log
     * @param at when it was done, if that was given
     * @param isConfirmed whether the person has confirmed an entry that looks like a mistake
     */
    public record Sent(Optional<SubmissionKey> once, KnownState known, Optional<Instant> at, boolean isConfirmed) {}

    /**
     * What was entered.
     *
     * @param events all logged or none
     * @param notices what is remarkable about it
     */
    public record Entered(List<NightEvent> events, List<EntryNotice> notices) {
        public Entered {
            events = List.copyOf(events);
            notices = List.copyOf(notices);
        }

        /** Nothing remarkable. */
        public static Entered of(List<NightEvent> events) {
            return new Entered(events, List.of());
        }

        /** An action that adds to the log. */
        public static Entered of(Action action, Effect.Entering effect, Entries entries, ActionContext context) {
            return new Entered(
                    effect.events(entries, context), action.checking().notices(entries, context));
        }
    }

    /** The outcome of an entry. */
    public sealed interface Outcome {
        /** The night after it. */
        NightState after();
    }

    /**
     * It is in the log.
     *
     * @param events one or more
     * @param notices what is remarkable about them
     * @param night all events before them, including those taken back
     * @param before the night without them
     * @param at when it was done, if that was given
     * @param now the time of entry
     */
    public record Logged(
            List<LoggedEvent> events,
            List<EntryNotice> notices,
            List<LoggedEvent> night,
            NightState before,
            NightState after,
            Optional<Instant> at,
            Instant now)
            implements Outcome {
        public Logged {
            night = List.copyOf(night);
            events = List.copyOf(events);
            notices = List.copyOf(notices);
        }

        public LoggedEvent first() {
            return events.get(0);
        }

        public LoggedEvent last() {
            return events.get(events.size() - 1);
        }
    }

    /** It was already in the log: the sender had not received the answer. */
    public record AlreadyLogged(LoggedEvent event, NightState after) implements Outcome {}

    /**
     * Adds the events of an action.
     *
     * @param now the time of entry
     * @param zone the computer's time zone
     * @param sent its known state is checked before the entry is read, which may make no sense for another night
     * @throws InputRefused if the events are impossible, or the log cannot be written
     * @throws LogChanged if the log has changed since the sender last saw it
     */
    public static Outcome add(
            NightLog opened,
            Instant now,
            ZoneId zone,
            Sent sent,
            Action.Timing timing,
            Function<ActionContext, Entered> entering) {
        Optional<Submission> earlier = sent.once().flatMap(opened::submitted);
        if (earlier.isPresent()) {
            return again(opened, now, earlier.get());
        }
        try {
            return addNew(opened, now, zone, sent, timing, entering);
        } catch (LogChanged | InputRefused e) {
            // Two devices may submit at once: then the conflicting event is this one.
            return sent.once()
                    .flatMap(opened::submitted)
                    .map(meanwhile -> again(opened, now, meanwhile))
                    .orElseThrow(() -> e);
        }
    }

    private static Outcome again(NightLog opened, Instant now, Submission sent) {
        return new AlreadyLogged(
                sent.event(), NightState.of(opened.events(sent.night()), now, new NightState.ModelCache()));
    }

    private static Outcome addNew(
            NightLog opened,
            Instant now,
            ZoneId zone,
            Sent sent,
            Action.Timing timing,
            Function<ActionContext, Entered> entering) {
        NightId id = LogEntry.latestNight(opened);
        List<LoggedEvent> night = opened.events(id);
        sent.known().check(id, night.get(night.size() - 1).seq());
        NightState.ModelCache models = new NightState.ModelCache();
        NightState before = NightState.of(night, now, models);
        EarlierNights earlier = EarlierNights.except(id, opened);
        Entered entered =
                entering.apply(new ActionContext(now, zone, sent.at(), before, night, earlier, sent.isConfirmed()));
        Instant happened = timing == Action.Timing.DONE ? sent.at().orElse(now) : now;
        List<LoggedEvent> logged =
                LogEntry.append(opened, id, entered.events(), happened, models, sent.once(), sent.known());
        return new Logged(
                logged,
                entered.notices(),
                night,
                before,
                NightState.of(opened.events(id), now, models),
                sent.at(),
                now);
    }
}
