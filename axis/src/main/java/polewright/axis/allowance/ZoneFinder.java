package polewright.axis.allowance;

import java.util.Optional;
import polewright.axis.rig.Rig;
import polewright.axis.work.Work;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** From site, rig and work to the zone of axis offsets that suits them all. */
public final class ZoneFinder {
    private ZoneFinder() {}

    public static ZoneOutcome find(Site site, Weather weather, Rig rig, Work work) {
        return new ZoneOutcome.Impossible(work.items().get(0).name(), Cause.MOUNT, Optional.empty());
    }
}
