package polewright.alignment.sighting;

import java.time.Instant;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Where a tube, a camera or an eye pointed, and when: what has to be kept away from the Sun.
 *
 * @param direction without air; a camera's own direction has air in it, half a degree at most
 */
public record LineOfSight(Instant at, AirlessDirection direction) {
    /** At a body, wherever it was then, below the horizon too. */
    public static LineOfSight atBody(SkyBody body, Instant at, Site site, Weather weather) {
        var moment = Sighted.moment(at, site, weather);
        return new LineOfSight(at, moment.airless(Ephemeris.apparent(body, moment)));
    }

    static LineOfSight of(CameraAttitude attitude) {
        return new LineOfSight(attitude.at(), new AirlessDirection(attitude.boresight()));
    }
}
