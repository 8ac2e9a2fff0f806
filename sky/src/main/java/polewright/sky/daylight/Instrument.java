package polewright.sky.daylight;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;

/**
 * A telescope with an eyepiece.
 *
 * @param apertureMm free diameter, 10 to 2000
 * @param magnification how much larger things look
 */
public record Instrument(double apertureMm, double magnification) {
    /** Exit pupil of the eyepiece used to search for a star: wide field, 4 mm (common practice). */
    private static final double FINDING_EXIT_PUPIL_MM = 4;

    public Instrument {
        if (!(apertureMm >= 10 && apertureMm <= 2000)) {
            throw new InputRefused(
                    "an aperture of " + PlainNumber.asTyped(apertureMm) + " mm is outside 10 to 2000",
                    "give the aperture in millimetres");
        }
        if (!(magnification >= 1 && magnification <= 5000)) {
            throw new InputRefused(
                    "a magnification of " + PlainNumber.asTyped(magnification) + " is outside 1 to 5000",
                    "divide the tube's focal length by the eyepiece's");
        }
    }

    /** With an eyepiece suited to finding things. */
    public static Instrument forFinding(double apertureMm) {
        return new Instrument(apertureMm, Math.max(1, apertureMm / FINDING_EXIT_PUPIL_MM));
    }

    public double exitPupilMm() {
        return apertureMm / magnification;
    }
}
