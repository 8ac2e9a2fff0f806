package polewright.app.command;

import java.util.List;
import java.util.Optional;
import polewright.app.text.ZoneRefusals;
import polewright.axis.allowance.WorkZone;
import polewright.axis.allowance.ZoneFinder;
import polewright.axis.allowance.ZoneOutcome;
import polewright.axis.work.Work;
import polewright.night.StandingEvents;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.sky.InputRefused;

/** What a night is for, before it is logged. */
final class TonightsWork {
    private TonightsWork() {}

    /**
     * The zone of that work.
     *
     * @throws InputRefused if no axis suits it
     */
    static WorkZone zone(NightEvent.Begun begun, Work work) {
        ZoneOutcome outcome = ZoneFinder.find(begun.site(), begun.weather(), begun.rig(), work);
        if (outcome instanceof ZoneOutcome.Found found) {
            return found.zone();
        } else if (outcome instanceof ZoneOutcome.Impossible impossible) {
            throw ZoneRefusals.of(impossible);
        } else if (outcome instanceof ZoneOutcome.AtOdds odds) {
            throw ZoneRefusals.of(odds);
        }
        throw new IllegalStateException("no refusal for " + outcome);
    }

    /** What a night was for in the end, if that was said and not replaced by a plain limit. */
    static Optional<Work> last(List<LoggedEvent> night) {
        Optional<Work> work = Optional.empty();
        for (LoggedEvent logged : StandingEvents.among(night).asMeant()) {
            if (logged.event() instanceof NightEvent.WorkSet set) {
                work = Optional.of(set.work());
            } else if (logged.event() instanceof NightEvent.AllowanceSet) {
                work = Optional.empty();
            }
        }
        return work;
    }
}
