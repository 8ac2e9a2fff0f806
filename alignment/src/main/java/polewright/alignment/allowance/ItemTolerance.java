package polewright.alignment.allowance;

import java.util.ArrayList;
import java.util.List;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Rig;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The tolerance of one item of the work taken alone.
 *
 * @param alone its own zone
 */
public record ItemTolerance(WorkItem item, WorkZone alone) {
    /** Each item of work that has a zone, in order; items that no axis satisfies are omitted. */
    public static List<ItemTolerance> each(Site site, Weather weather, Rig rig, Work work) {
        List<ItemTolerance> tolerances = new ArrayList<>();
        for (WorkItem item : work.items()) {
            if (ZoneFinder.find(site, weather, rig, new Work(List.of(item))) instanceof ZoneOutcome.Found found) {
                tolerances.add(new ItemTolerance(item, found.zone()));
            }
        }
        return tolerances;
    }
}
