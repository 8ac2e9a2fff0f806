package polewright.sky.place;

import polewright.sky.angle.Angle;

/**
 * Hour angle and declination relative to the true pole of date.
 *
 * @param hourAngle from the upper meridian, positive west, [−180°, 180°)
 * @param declination north positive in both hemispheres
 */
public record HourAnglePlace(Angle hourAngle, Angle declination) {
    public HourAnglePlace {
        hourAngle = hourAngle.wrappedSigned();
    }
}
