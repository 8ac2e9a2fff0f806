package polewright.operations;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.event.EventOrder;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.store.KnownState;
import polewright.store.NightLog;
import polewright.store.SubmissionKey;

/**
 * The one way into the log: what is added is known to make sense with the rest of its night, and goes in whole or not at
 * all.
 */
public final class LogEntry {
    private LogEntry() {}

    /**
     * A night that was begun.
     *
     * @param night with a key that was sent before, the one that it began then
     * @param notCopied why the log was not copied before it, if that failed
     */
    public record Beginning(NightId night, Optional<String> notCopied) {}

    /**
     * Begins a night with what is known of it at once, and keeps a copy of the log as it was before.
     *
     * @param told what follows the beginning, in order
     */
    public static Beginning begin(
            NightLog opened,
            NightEvent.Begun begun,
            List<NightEvent> told,
            Instant now,
            NightState.ModelCache models,
            Optional<SubmissionKey> once) {
        List<NightEvent> all = new ArrayList<>(List.of(begun));
        all.addAll(told);
        check(following(List.of(), all, now), now, models);
        Optional<String> notCopied = Optional.empty();
        if (once.flatMap(opened::submitted).isEmpty()) {
            try {
                opened.keepCopy();
            } catch (InputRefused e) {
                if (e.isForNow()) {
                    throw e;
                }
                notCopied = Optional.ofNullable(e.getMessage());
            }
        }
        return new Beginning(opened.begin(begun, told, now, once), notCopied);
    }

    /**
     * Adds whole nights that came from a file, all or none.
     *
     * @param goesOn whether the last of them is the one under way
     * @throws polewright.sky.InputRefused if one of them cannot have happened; nothing is added then
     */
    public static List<NightId> importNights(
            NightLog opened, List<List<LoggedEvent>> nights, boolean goesOn, Optional<SubmissionKey> once) {
        nights.forEach(NightState::of);
        return opened.importNights(nights, goesOn, once);
    }

    /**
     * Adds one event, if the night with it can be worked out: what cannot have been seen must not get in.
     *
     * @throws polewright.sky.InputRefused if it cannot; the log is as before
     */
    public static LoggedEvent append(
            NightLog opened, NightId night, NightEvent event, Instant now, NightState.ModelCache models) {
        return append(opened, night, List.of(event), now, models, Optional.empty(), KnownState.NOTHING)
                .get(0);
    }

    /**
     * Adds several, all or none; if they were sent before, what was logged first at that time is answered.
     *
     * @throws polewright.sky.InputRefused if the night with them cannot be worked out
     * @throws polewright.store.LogChanged if the log is no longer as it was known
     */
    public static List<LoggedEvent> append(
            NightLog opened,
            NightId night,
            List<NightEvent> events,
            Instant now,
            NightState.ModelCache models,
            Optional<SubmissionKey> once,
            KnownState known) {
        check(following(opened.events(night), events, now), now, models);
        return opened.append(night, events, now, once, known);
    }

    /** The night that is added to: the last one of the log. */
    public static NightId latestNight(NightLog opened) {
        return opened.latest()
                .orElseThrow(() -> new OperationFailed(
                        "no night has begun in this log. Begin one with polewright begin --site LAT,LON."));
    }

    private static List<LoggedEvent> following(List<LoggedEvent> night, List<NightEvent> events, Instant now) {
        List<LoggedEvent> more = new ArrayList<>(night);
        for (NightEvent event : events) {
            more.add(new LoggedEvent(
                    more.isEmpty() ? 1 : more.get(more.size() - 1).seq() + 1, now, event));
        }
        return more;
    }

    private static void check(List<LoggedEvent> night, Instant now, NightState.ModelCache models) {
        EventOrder.check(night);
        NightState.of(night, now, models);
    }
}
