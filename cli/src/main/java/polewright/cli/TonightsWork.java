package polewright.cli;

import java.util.List;
import java.util.Optional;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.allowance.ZoneFinder;
import polewright.alignment.allowance.ZoneOutcome;
import polewright.alignment.work.Work;
import polewright.report.text.ZoneRefusals;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** The work of a night before it is logged. */
final class TonightsWork {
    private TonightsWork() {}

    /**
     * The zone of that work.
     *
     * @throws InputRefused if no axis satisfies it
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

    /** The final work of a night, if it was given and not replaced by a plain limit. */
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
