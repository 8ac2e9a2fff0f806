package polewright.sky.body;

import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * The position of one body at one moment in every frame.
 *
 * @param place of date, topocentric, without refraction
 * @param hourAngle hour angle and declination of that place
 * @param airless geometric direction
 * @param refracted direction as seen
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
