package polewright.operations.camera;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.image.match.SkyPatch;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Where a frame is said to look, before it is said how near. */
public sealed interface NearPlace {
    /** A celestial pole; the one that is up, or either when that is not known. */
    record Pole(Optional<Boolean> north) implements NearPlace {}

    /** Something on the sky, or a place. */
    record Body(SkyBody body) implements NearPlace {}

    /** What is meant, if it moves among the stars: where it is, only the time tells. */
    default Optional<SkyBody> moving() {
        return this instanceof Body named && !(named.body() instanceof FixedStar)
                ? Optional.of(named.body())
                : Optional.empty();
    }

    /**
     * The parts of the sky that are meant, to be tried in this order.
     *
     * @param within how near
     * @param site if known
     * @param at when it was taken, near enough for a planet
     */
    default List<SkyPatch> patches(Angle within, Optional<Site> site, Instant at) {
        if (this instanceof Pole pole) {
            return pole.north()
                    .or(() -> site.map(Site::isNorthern))
                    .map(north -> List.of(SkyPatch.aroundPole(north, within)))
                    .orElseGet(() -> List.of(SkyPatch.aroundPole(true, within), SkyPatch.aroundPole(false, within)));
        }
        CatalogueStar place = place(((Body) this).body(), site, at);
        return List.of(new SkyPatch(place.rightAscension(), place.declination(), within));
    }

    private static CatalogueStar place(SkyBody body, Optional<Site> site, Instant at) {
        if (body instanceof FixedStar fixed) {
            return fixed.star();
        }
        // Without a site the middle of the Earth's day side would do as well: the Moon alone is off, by up to two
        // degrees.
        ObservingMoment moment =
                ObservingMoment.of(site.orElseGet(() -> Site.ofDegrees(0, 0, 0)), SkyTime.of(at), Weather.AIRLESS);
        return moment.catalogueDirection(Ephemeris.apparent(body, moment));
    }
}
