package polewright.sky.almanac;

import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.place.Site;
import polewright.sky.time.Interval;

/** The times when a body crosses an altitude. For several altitudes of one body, use one {@link AltitudeTrack}. */
public final class AltitudeCrossings {
    private AltitudeCrossings() {}

    /**
     * All crossings of an altitude by the body's centre, in time order.
     *
     * @param airlessAltitude topocentric, without refraction
     */
    public static List<Crossing> of(SkyBody body, Angle airlessAltitude, Site site, Interval when) {
        return AltitudeTrack.of(body, site, when).crossings(airlessAltitude);
    }
}
