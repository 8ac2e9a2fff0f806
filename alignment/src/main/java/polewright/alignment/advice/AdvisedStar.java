package polewright.alignment.advice;

import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.RefractedDirection;

/**
 * A star that a sighting may use, and where to look for it.
 *
 * @param name its name, as commands accept it
 * @param designation its letter or number on charts
 * @param magnitude Johnson V
 * @param place hour angle and declination about the true pole at the time of the advice, without refraction
 * @param direction where it is seen at that time, with refraction
 */
public record AdvisedStar(
        String name, String designation, double magnitude, HourAnglePlace place, RefractedDirection direction) {
    private static final double EASY_MAGNITUDE = 3.5;

    /** Whether most people can see it without optics. */
    public boolean isBright() {
        return magnitude <= EASY_MAGNITUDE;
    }
}
