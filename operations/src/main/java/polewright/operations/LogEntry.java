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
 * The only way to add to the log: an addition must be consistent with the rest of its night, and is written whole or
 * not at all.
 */
public final class LogEntry {
    private LogEntry() {}

    /**
     * A night that was begun.
     *
     * @param night the new night; for a repeated key, the one that the first submission began
     * @param notCopied why the log could not be backed up first, if that failed
     */
    public record Beginning(NightId night, Optional<String> notCopied) {}

    /**
     * Begins a night with the events known at the start, after backing up the log.
     *
     * @param initial the events that follow the beginning, in order
     */
    public static Beginning begin(
            NightLog opened,
            NightEvent.Begun begun,
            List<NightEvent> initial,
            Instant now,
            NightState.ModelCache models,
            Optional<SubmissionKey> once) {
        List<NightEvent> all = new ArrayList<>(List.of(begun));
        all.addAll(initial);
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
        return new Beginning(opened.begin(begun, initial, now, once), notCopied);
    }

    /**
     * Adds whole nights from a file, all or none.
     *
     * @param goesOn whether the last of them is still in progress
     * @throws polewright.sky.InputRefused if one of them cannot have happened; nothing is added then
     */
    public static List<NightId> importNights(
            NightLog opened, List<List<LoggedEvent>> nights, boolean goesOn, Optional<SubmissionKey> once) {
        nights.forEach(NightState::of);
        return opened.importNights(nights, goesOn, once);
    }

    /**
     * Adds one event, if the night can be computed with it: an impossible observation must not be logged.
     *
     * @throws polewright.sky.InputRefused if it cannot; the log is unchanged
     */
    public static LoggedEvent append(
            NightLog opened, NightId night, NightEvent event, Instant now, NightState.ModelCache models) {
        return append(opened, night, List.of(event), now, models, Optional.empty(), KnownState.NOTHING)
                .get(0);
    }

    /**
     * Adds several events, all or none; for a repeated key, returns what was logged the first time.
     *
     * @throws polewright.sky.InputRefused if the night cannot be computed with them
     * @throws polewright.store.LogChanged if the log has changed since the caller last saw it
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

    /** The most recent night of the log, to which events are added. */
    public static NightId latestNight(NightLog opened) {
        return opened.latest()
                .orElseThrow(() -> new OperationFailed("no night has begun in this log. Begin one with {do:begin}."));
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
