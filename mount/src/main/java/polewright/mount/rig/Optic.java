package polewright.mount.rig;

import java.util.Optional;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * A visual instrument: a finder, or an eyepiece in the tube.
 *
 * @param name the user's name for it, e.g. {@code finder} or {@code 25 mm}
 * @param field true field, edge to edge
 * @param view the orientation of its image
 * @param division angle on the sky of one reticle division, if it has a reticle
 */
public record Optic(String name, Angle field, View view, Optional<Angle> division) {
    public Optic {
        if (!(field.degrees() > 0 && field.degrees() <= 60)) {
            throw new InputRefused(
                    "a field width of " + shown(field.degrees()) + " degrees for '" + name + "' is outside 0 to 60",
                    "give the true field: eyepiece apparent field / magnification");
        }
        if (division.isPresent() && !(division.get().radians() > 0)) {
            throw new InputRefused(
                    "a reticle division of " + shown(division.get().arcseconds()) + " arcseconds is not above 0",
                    "give the angle of one division");
        }
    }

    // Conversion from radians gives 61.00000000000001 for a field entered as 61.
    private static double shown(double value) {
        return Math.rint(value * 1e6) / 1e6;
    }
}
