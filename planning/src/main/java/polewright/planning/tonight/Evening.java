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
 * What a night's plan starts from.
 *
 * @param now from when on is planned
 * @param axis where the polar axis points; empty before that is known, and on a fork set upright
 */
public record Evening(
        Site site,
        Weather weather,
        Rig rig,
        Horizon horizon,
        Instant now,
        Darkness darkness,
        Optional<KnownAxis> axis) {
    /** The night that is under way at that time, or by day the one to come. */
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
