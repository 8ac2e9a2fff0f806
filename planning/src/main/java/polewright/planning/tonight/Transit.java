package polewright.planning.tonight;

import java.time.Instant;
import polewright.mount.reach.SkyPath;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SiderealRate;

/** The upper transit of a body, by day or by night. */
final class Transit {
    // The Moon falls behind the stars by 1/27 of a turn a day: each iteration reduces the error by a factor of 27.
    private static final int ROUNDS = 5;

    private Transit() {}

    /**
     * The transit nearest to a time, to a second.
     *
     * @param path of a star, valid at any time; for other bodies it ends with the night
     */
    static Instant nearest(Evening evening, SkyBody body, SkyPath path, Instant near) {
        if (body instanceof FixedStar) {
            return near.plus(SiderealRate.lasting(path.at(near).hourAngle().negated()));
        }
        Instant at = near;
        for (int round = 0; round < ROUNDS; round++) {
            ObservingMoment moment = evening.moment(at);
            HourAnglePlace place = moment.hourAngle(Ephemeris.apparent(body, moment));
            at = at.plus(SiderealRate.lasting(place.hourAngle().negated()));
        }
        return at;
    }
}
