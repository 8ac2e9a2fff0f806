package polewright.operations.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.alignment.allowance.ZoneFinder;
import polewright.alignment.allowance.ZoneOutcome;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/** The work of a night. */
public final class TonightsWork {
    private TonightsWork() {}

    /** The zone of that work, if an axis suits it. */
    public static ZoneOutcome zone(NightEvent.Begun begun, Work work) {
        return ZoneFinder.find(begun.site(), begun.weather(), begun.rig(), work);
    }

    /**
     * The event that sets it.
     *
     * @throws ImpossibleWork if no axis suits it
     */
    static NightEvent set(NightEvent.Begun begun, Work work) {
        ZoneOutcome outcome = zone(begun, work);
        if (outcome instanceof ZoneOutcome.Found) {
            return new NightEvent.WorkSet(work);
        }
        throw new ImpossibleWork(outcome);
    }

    /** The final work of a night, if it was given and not replaced by a plain limit. */
    public static Optional<Work> last(List<LoggedEvent> night) {
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

    /** The work so far, with this item replacing one of its name, or added. */
    static Work with(List<WorkItem> before, WorkItem item) {
        List<WorkItem> items = new ArrayList<>(before);
        for (int i = 0; i < items.size(); i++) {
            if (items.get(i).name().equalsIgnoreCase(item.name())) {
                items.set(i, item);
                return new Work(items);
            }
        }
        items.add(item);
        return new Work(items);
    }
}
