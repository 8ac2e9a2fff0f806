package polewright.axis.pointing;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * The moments of centrings. Those of the stars themselves are exact and computed once; what a mistaken time or site would have
 * been comes from the nearest of them, to 0.2″.
 */
final class CentringMoments {
    private static final Duration SAME_NIGHT = Duration.ofHours(15);

    private final Site site;
    private final Weather weather;
    private final NavigableMap<Instant, ObservingMoment> own = new TreeMap<>();

    CentringMoments(Site site, Weather weather, Collection<CentredStar> stars) {
        this.site = site;
        this.weather = weather;
        stars.forEach(star -> own.computeIfAbsent(star.at(), this::exact));
    }

    ObservingMoment of(Site at, Instant when) {
        ObservingMoment moment = of(when);
        return at.equals(site) ? moment : moment.at(at);
    }

    private ObservingMoment of(Instant when) {
        return Stream.of(own.floorKey(when), own.ceilingKey(when))
                .filter(Objects::nonNull)
                .min(Comparator.comparing(known -> Duration.between(known, when).abs()))
                .filter(known -> Duration.between(known, when).abs().compareTo(SAME_NIGHT) <= 0)
                .map(own::get)
                .map(known -> known.time().utc().equals(when) ? known : known.sameNight(SkyTime.of(when)))
                .orElseGet(() -> exact(when));
    }

    private ObservingMoment exact(Instant when) {
        return ObservingMoment.of(site, SkyTime.of(when), weather);
    }
}
