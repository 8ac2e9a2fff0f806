package polewright.operations.action;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.mount.rig.Rig;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * What is known when an action is entered.
 *
 * @param now the time of entry
 * @param at when it was done, if that was given
 * @param before the night so far
 * @param night all its events, including those taken back
 * @param isConfirmed whether an entry that looks like a mistake is meant as it stands
 */
public record ActionContext(
        Instant now, Optional<Instant> at, NightState before, List<LoggedEvent> night, boolean isConfirmed) {
    public ActionContext {
        night = List.copyOf(night);
    }

    /** The same for another time at which it was done. */
    public ActionContext doneAt(Optional<Instant> when) {
        return new ActionContext(now, when, before, night, isConfirmed);
    }

    public NightEvent.Begun begun() {
        return before.begun();
    }

    public Rig rig() {
        return before.begun().rig();
    }
}
