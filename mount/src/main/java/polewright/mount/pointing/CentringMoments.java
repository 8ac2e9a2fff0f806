package polewright.mount.pointing;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** The observing moments of centrings, cached because the same ones are needed many times. */
final class CentringMoments {
    private final Site site;
    private final Weather weather;
    private final Map<Instant, ObservingMoment> own = new HashMap<>();

    CentringMoments(Site site, Weather weather, Collection<CentredStar> stars) {
        this.site = site;
        this.weather = weather;
        stars.forEach(star -> own.computeIfAbsent(star.at(), this::exact));
    }

    ObservingMoment of(Site at, Instant when) {
        ObservingMoment known = own.get(when);
        ObservingMoment moment = known == null ? exact(when) : known;
        return at.equals(site) ? moment : moment.at(at);
    }

    private ObservingMoment exact(Instant when) {
        return ObservingMoment.of(site, SkyTime.of(when), weather);
    }
}
