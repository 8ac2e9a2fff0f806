package polewright.sky.place;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * A star's catalogue entry: ICRS position at epoch J2000.0, and its motion.
 *
 * @param rightAscension ICRS
 * @param declination ICRS
 * @param properMotionRaMasPerYear μα·cos δ, milliarcseconds a year (the factor cos δ already applied)
 * @param properMotionDecMasPerYear μδ, milliarcseconds a year
 * @param parallaxMas milliarcseconds; 0 when unknown
 * @param radialVelocityKmPerSecond receding positive; 0 when unknown
 */
public record CatalogueStar(
        Angle rightAscension,
        Angle declination,
        double properMotionRaMasPerYear,
        double properMotionDecMasPerYear,
        double parallaxMas,
        double radialVelocityKmPerSecond) {
    public CatalogueStar {
        if (!(Math.abs(declination.degrees()) <= 90 + 1e-9)) {
            throw new InputRefused(
                    "declination " + PlainNumber.asTyped(declination.degrees()) + " is beyond 90 degrees",
                    "give right ascension first, then declination, in degrees");
        }
        rightAscension = rightAscension.wrappedPositive();
    }

    /** A direction without known motion. */
    public static CatalogueStar fixed(Angle rightAscension, Angle declination) {
        return new CatalogueStar(rightAscension, declination, 0, 0, 0, 0);
    }
}
