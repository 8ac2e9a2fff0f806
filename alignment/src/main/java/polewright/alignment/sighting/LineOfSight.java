package polewright.alignment.sighting;

import java.time.Instant;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The direction of a tube, camera or eye at a time: it must be kept away from the Sun.
 *
 * @param direction without refraction; a camera's own direction includes refraction, half a degree at most
 */
public record LineOfSight(Instant at, AirlessDirection direction) {
    /** Toward a body, even if it was below the horizon. */
    public static LineOfSight atBody(SkyBody body, Instant at, Site site, Weather weather) {
        var moment = Sighted.moment(at, site, weather);
        return new LineOfSight(at, moment.airless(Ephemeris.apparent(body, moment)));
    }

    static LineOfSight of(CameraAttitude attitude) {
        return new LineOfSight(attitude.at(), new AirlessDirection(attitude.boresight()));
    }
}
