package polewright.sky.almanac;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;
import polewright.sky.time.SkyTime;

/** When a body passes an altitude. */
public final class AltitudeCrossings {
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final Duration GOOD_TO = Duration.ofMillis(500);

    private AltitudeCrossings() {}

    /**
     * All passages of a body's centre through an altitude.
     *
     * @param airlessAltitude topocentric, without air
     */
    public static List<Crossing> of(SkyBody body, Angle airlessAltitude, Site site, Interval when) {
        List<Crossing> crossings = new ArrayList<>();
        Instant before = when.from();
        double below = above(body, airlessAltitude, site, before);
        while (before.isBefore(when.to())) {
            Instant after = before.plus(STEP).isAfter(when.to()) ? when.to() : before.plus(STEP);
            double then = above(body, airlessAltitude, site, after);
            if ((below < 0) != (then < 0)) {
                crossings.add(new Crossing(
                        between(body, airlessAltitude, site, before, after, below),
                        then >= 0 ? Crossing.Sense.RISING : Crossing.Sense.SETTING));
            }
            before = after;
            below = then;
        }
        return crossings;
    }

    private static Instant between(SkyBody body, Angle altitude, Site site, Instant from, Instant to, double atFrom) {
        Instant low = from;
        Instant high = to;
        while (Duration.between(low, high).compareTo(GOOD_TO) > 0) {
            Instant middle = low.plus(Duration.between(low, high).dividedBy(2));
            if ((above(body, altitude, site, middle) < 0) == (atFrom < 0)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private static double above(SkyBody body, Angle altitude, Site site, Instant at) {
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(at), Weather.standardAt(site.heightMetres()));
        return moment.airless(Ephemeris.apparent(body, moment)).altitude().radians() - altitude.radians();
    }
}
