package polewright.sky.place;

import polewright.sky.angle.Angle;

/**
 * A direction by hour angle and declination about the true pole of date.
 *
 * @param hourAngle from the upper meridian, positive west, [−180°, 180°)
 * @param declination north positive in both hemispheres
 */
public record HourAnglePlace(Angle hourAngle, Angle declination) {
    public HourAnglePlace {
        hourAngle = hourAngle.wrappedSigned();
    }
}
