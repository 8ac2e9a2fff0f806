package polewright.sky.almanac;

import polewright.sky.angle.Angle;

/**
 * How much the Moon brightens a clear night's sky.
 *
 * <p>Source: K. Krisciunas and B. E. Schaefer, <i>A model of the brightness of moonlight</i>, Publications of the
 * Astronomical Society of the Pacific 103 (1991) 1033 (constants from memory; good to 8 to 23 % on clear nights by its
 * authors). V band, extinction 0.172 magnitudes an air mass. Left out: twilight, haze, town light.
 */
public final class Moonlight {
    /** Zenith of a dark country sky, V magnitudes a square arcsecond (common practice). */
    public static final double DARK_ZENITH = 21.5;

    private static final double EXTINCTION = 0.172;

    private Moonlight() {}

    /**
     * Brightness of the sky, V magnitudes a square arcsecond.
     *
     * @param altitude of the place looked at, above 0
     * @param moonAltitude airless; below 0 the Moon does nothing
     * @param distance from the Moon to the place
     * @param phaseAngle of the Moon, 0 at full
     */
    public static double sky(Angle altitude, Angle moonAltitude, Angle distance, Angle phaseAngle) {
        double airMass = airMass(altitude);
        double dark = nanolamberts(DARK_ZENITH) * Math.pow(10, -0.4 * EXTINCTION * (airMass - 1)) * airMass;
        return magnitude(dark + moonlight(airMass, moonAltitude, distance, phaseAngle));
    }

    private static double moonlight(double airMass, Angle moonAltitude, Angle distance, Angle phaseAngle) {
        if (moonAltitude.radians() <= 0) {
            return 0;
        }
        double phaseDeg = phaseAngle.abs().degrees();
        double illuminance = Math.pow(10, -0.4 * (3.84 + 0.026 * phaseDeg + 4e-9 * Math.pow(phaseDeg, 4)));
        double distanceDeg = Math.max(distance.degrees(), 1);
        double cosine = Math.cos(Math.toRadians(distanceDeg));
        // Rayleigh scattering, and Mie scattering beyond 10° of the Moon and within.
        double mie = distanceDeg >= 10 ? Math.pow(10, 6.15 - distanceDeg / 40) : 6.2e7 / (distanceDeg * distanceDeg);
        double scattering = Math.pow(10, 5.36) * (1.06 + cosine * cosine) + mie;
        return scattering
                * illuminance
                * Math.pow(10, -0.4 * EXTINCTION * airMass(moonAltitude))
                * (1 - Math.pow(10, -0.4 * EXTINCTION * airMass));
    }

    /** The paper's own, finite at the horizon: (1 − 0.96 sin² z)^−½. */
    private static double airMass(Angle altitude) {
        double cosine = altitude.radians() <= 0 ? 1 : altitude.cos();
        return 1 / Math.sqrt(1 - 0.96 * cosine * cosine);
    }

    private static double nanolamberts(double magnitude) {
        return 34.08 * Math.exp(20.7233 - 0.92104 * magnitude);
    }

    private static double magnitude(double nanolamberts) {
        return (20.7233 - Math.log(nanolamberts / 34.08)) / 0.92104;
    }
}
