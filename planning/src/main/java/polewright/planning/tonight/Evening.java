package polewright.planning.tonight;

import java.time.Instant;
import java.util.Optional;
import polewright.mount.reach.PointingLimits;
import polewright.mount.rig.Rig;
import polewright.sky.almanac.Darkness;
import polewright.sky.place.Horizon;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * The starting point of a night's plan.
 *
 * @param now start of the plan
 * @param axis the polar axis; empty if unknown, and on an upright fork
 */
public record Evening(
        Site site,
        Weather weather,
        Rig rig,
        Horizon horizon,
        Instant now,
        Darkness darkness,
        Optional<KnownAxis> axis) {
    /** The current night at that time, or by day the next one. */
    public static Evening at(
            Site site, Weather weather, Rig rig, Horizon horizon, Instant now, Optional<KnownAxis> axis) {
        return new Evening(site, weather, rig, horizon, now, Darkness.comingAt(site, now), axis);
    }

    public PointingLimits reach() {
        return PointingLimits.of(site, rig, horizon);
    }

    public ObservingMoment moment(Instant at) {
        return ObservingMoment.of(site, SkyTime.of(at), weather);
    }
}
