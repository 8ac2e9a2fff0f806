package polewright.alignment.work;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** How the mount is corrected while the shutter is open. */
public sealed interface Guiding {
    /** Not at all. */
    record Unguided() implements Guiding {}

    /**
     * A star is held still in both axes, so the field only rotates about it.
     *
     * @param starDistance from the middle of the camera's field to the guide star
     */
    record Guided(Angle starDistance) implements Guiding {
        public Guided {
            if (!(starDistance.radians() >= 0 && starDistance.degrees() <= 20)) {
                throw new InputRefused(
                        "a guide star " + PlainNumber.of(starDistance.arcminutes())
                                + " arcminutes away is outside 0 to 1200",
                        "give its distance from the centre of the picture");
            }
        }
    }
}
