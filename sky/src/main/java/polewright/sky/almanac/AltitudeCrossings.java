package polewright.sky.almanac;

import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.place.Site;
import polewright.sky.time.Interval;

/** When a body passes an altitude. For several altitudes of one body, ask one {@link AltitudeTrack}. */
public final class AltitudeCrossings {
    private AltitudeCrossings() {}

    /**
     * All passages of a body's centre through an altitude, in order of time.
     *
     * @param airlessAltitude topocentric, without air
     */
    public static List<Crossing> of(SkyBody body, Angle airlessAltitude, Site site, Interval when) {
        return AltitudeTrack.of(body, site, when).crossings(airlessAltitude);
    }
}
