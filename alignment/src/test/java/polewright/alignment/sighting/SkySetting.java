package polewright.alignment.sighting;

import java.time.Instant;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Places a star for a test: at an hour angle and a declination of date, at one instant. */
public final class SkySetting {
    public static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    public static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    public static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);

    private SkySetting() {}

    public static FixedStar starAt(Site site, Instant at, double hourAngleDeg, double declinationDeg) {
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(at), Weather.AIRLESS);
        HourAnglePlace place = new HourAnglePlace(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(declinationDeg));
        return new FixedStar("a test star", moment.catalogueDirection(moment.apparent(place)));
    }
}
