package polewright.planning.tonight;

import java.time.Instant;
import polewright.mount.reach.SkyPath;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SiderealRate;

/** When something passes the upper meridian, by day or by night. */
final class Transit {
    // The Moon falls behind the stars by 1/27 of a turn a day: each round leaves a 27th of the error of the one before.
    private static final int ROUNDS = 5;

    private Transit() {}

    /**
     * The transit nearest to a time, to a second.
     *
     * @param path of a star, which serves at any time; that of other bodies ends with the night
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
