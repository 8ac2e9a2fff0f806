package polewright.mount.reach;

import java.time.Duration;
import java.time.Instant;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.time.SiderealRate;

/** The place of something as a function of time. */
@FunctionalInterface
public interface SkyPath {
    HourAnglePlace at(Instant when);

    /** Something fixed among the stars, given its place at one time. */
    static SkyPath fixed(HourAnglePlace place, Instant at) {
        return when -> new HourAnglePlace(
                place.hourAngle()
                        .plus(SiderealRate.during(Duration.between(at, when).toMillis() / 1000.0)),
                place.declination());
    }
}
