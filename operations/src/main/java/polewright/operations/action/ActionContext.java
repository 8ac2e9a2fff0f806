package polewright.operations.action;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import polewright.mount.rig.Rig;
import polewright.operations.seasons.EarlierNights;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * What is known when an action is entered.
 *
 * @param now the time of entry
 * @param zone the computer's time zone
 * @param at when it was done, if that was given
 * @param before the night so far
 * @param night all its events, including those taken back
 * @param earlier the other nights, while the log is open
 * @param isConfirmed whether the person has confirmed an entry that looks like a mistake
 */
public record ActionContext(
        Instant now,
        ZoneId zone,
        Optional<Instant> at,
        NightState before,
        List<LoggedEvent> night,
        EarlierNights earlier,
        boolean isConfirmed) {
    public ActionContext {
        night = List.copyOf(night);
    }

    /** The same, done at another time. */
    public ActionContext doneAt(Optional<Instant> when) {
        return new ActionContext(now, zone, when, before, night, earlier, isConfirmed);
    }

    public NightEvent.Begun begun() {
        return before.begun();
    }

    public Rig rig() {
        return before.begun().rig();
    }
}
