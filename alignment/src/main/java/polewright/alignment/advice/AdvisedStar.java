package polewright.alignment.advice;

import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.RefractedDirection;

/**
 * A star that a sighting may use, and where to look for it.
 *
 * @param name what it is called, as commands take it
 * @param designation its letter or number, as charts have it
 * @param magnitude how bright, Johnson V
 * @param place where it stands about the true pole when it is advised, without air
 * @param direction where it is seen then
 */
public record AdvisedStar(
        String name, String designation, double magnitude, HourAnglePlace place, RefractedDirection direction) {
    private static final double EASY_MAGNITUDE = 3.5;

    /** Whether people can be expected to see it without optics. */
    public boolean isBright() {
        return magnitude <= EASY_MAGNITUDE;
    }
}
