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

    /**
     * The event that sets it.
     *
     * @throws ImpossibleWork if no axis suits it
     */
    static NightEvent set(NightEvent.Begun begun, Work work) {
        require(begun, work);
        return new NightEvent.WorkSet(work);
    }

    /**
     * Makes sure that an axis suits it.
     *
     * @throws ImpossibleWork if none does
     * @throws polewright.sky.InputRefused if its part of the sky cannot be observed from the night's site
     */
    public static void require(NightEvent.Begun begun, Work work) {
        if (ZoneFinder.find(begun.site(), begun.weather(), begun.rig(), work) instanceof ZoneOutcome.None none) {
            throw new ImpossibleWork(none);
        }
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
