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

/** Where a frame points, before the search radius is known. */
public sealed interface NearPlace {
    /** A celestial pole; the elevated one, or either if that is not known. */
    record Pole(Optional<Boolean> north) implements NearPlace {}

    /** A celestial body or place. */
    record Body(SkyBody body) implements NearPlace {}

    /** The body, if it moves among the stars: its place depends on the time. */
    default Optional<SkyBody> movingBody() {
        return this instanceof Body named && !(named.body() instanceof FixedStar)
                ? Optional.of(named.body())
                : Optional.empty();
    }

    /**
     * The search regions, to be tried in this order.
     *
     * @param within the radius
     * @param site if known
     * @param at when the frame was taken, accurate enough for a planet
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
        // Without a site the Earth's surface at 0°, 0° is used: only the Moon is affected, by up to two degrees.
        ObservingMoment moment =
                ObservingMoment.of(site.orElseGet(() -> Site.ofDegrees(0, 0, 0)), SkyTime.of(at), Weather.AIRLESS);
        return moment.catalogueDirection(Ephemeris.apparent(body, moment));
    }
}
