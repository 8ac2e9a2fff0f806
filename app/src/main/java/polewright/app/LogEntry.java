package polewright.app;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.night.NightState;
import polewright.night.event.EventOrder;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.night.log.Known;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;
import polewright.night.log.SubmissionKey;

/** One more event in a night. */
public final class LogEntry {
    private LogEntry() {}

    /**
     * Adds it, if the night with it can be worked out: what cannot have been seen must not get in.
     *
     * @throws polewright.sky.InputRefused if it cannot; the log is as before
     */
    public static LoggedEvent append(
            NightLog opened, NightId night, NightEvent event, Instant now, NightState.ModelCache models) {
        return append(opened, night, event, now, models, Optional.empty(), Known.NOTHING);
    }

    /**
     * The same for what may have been sent before: then it is what was logged at that time.
     *
     * @throws polewright.night.log.MovedOn if the log is no longer as it was known
     */
    public static LoggedEvent append(
            NightLog opened,
            NightId night,
            NightEvent event,
            Instant now,
            NightState.ModelCache models,
            Optional<SubmissionKey> once,
            Known known) {
        List<LoggedEvent> more = new ArrayList<>(opened.events(night));
        more.add(new LoggedEvent(more.get(more.size() - 1).seq() + 1, now, event));
        EventOrder.check(more);
        NightState.of(more, now, models);
        return opened.append(night, event, now, once, known);
    }

    /** The night that is added to: the last one of the log. */
    public static NightId latestNight(NightLog opened) {
        return opened.latest()
                .orElseThrow(() ->
                        new JobFailed("no night has begun in this log: start with polewright begin --site LAT,LON."));
    }
}
