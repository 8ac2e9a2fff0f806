package polewright.sky.body;

import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * Where one body stands at one moment, in every frame that a person asks for.
 *
 * @param place of date, topocentric, without air
 * @param hourAngle hour angle and declination of that place
 * @param airless direction as geometry has it
 * @param refracted direction as it is seen
 * @param sunDistance angle to the centre of the Sun
 */
public record BodyPosition(
        SkyBody body,
        ObservingMoment moment,
        ApparentPlace place,
        HourAnglePlace hourAngle,
        AirlessDirection airless,
        RefractedDirection refracted,
        Angle sunDistance) {
    public static BodyPosition of(SkyBody body, ObservingMoment moment) {
        ApparentPlace place = Ephemeris.apparent(body, moment);
        return new BodyPosition(
                body,
                moment,
                place,
                moment.hourAngle(place),
                moment.airless(place),
                moment.refracted(place),
                Ephemeris.sunDistance(place, moment));
    }
}
