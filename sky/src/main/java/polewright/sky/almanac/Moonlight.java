package polewright.sky.almanac;

import polewright.sky.angle.Angle;

/**
 * How much the Moon brightens a clear night's sky.
 *
 * <p>Source: K. Krisciunas and B. E. Schaefer, <i>A model of the brightness of moonlight</i>, Publications of the
 * Astronomical Society of the Pacific 103 (1991) 1033, equations 3 and 19 to 21 (as in desihub/specsim,
 * specsim/atmosphere.py, 329b1f2e3121, and jrthorstensen/thorsky, thorskyutil.py, a9662a50ff6f; accurate to 8 to 23 % on
 * clear nights according to its authors). V band, extinction 0.172 magnitudes per air mass. Left out: twilight, haze,
 * light pollution.
 */
public final class Moonlight {
    /** Zenith of a dark country sky, V magnitudes per square arcsecond (common practice). */
    public static final double DARK_ZENITH = 21.5;

    private static final double EXTINCTION = 0.172;
    private static final double KEPT_IN_ZENITH = Math.pow(10, 0.4 * EXTINCTION);
    private static final double RAYLEIGH = Math.pow(10, 5.36);

    private static final double DARK_NANOLAMBERTS = nanolamberts(DARK_ZENITH);

    /** Moonlight that reaches the ground, dimmed by extinction. */
    private final double illuminance;

    private Moonlight(double illuminance) {
        this.illuminance = illuminance;
    }

    /**
     * Moonlight of the Moon at an altitude and phase.
     *
     * @param moonAltitude airless; below 0 there is no moonlight
     * @param phaseAngle of the Moon, 0 at full
     */
    public static Moonlight of(Angle moonAltitude, Angle phaseAngle) {
        if (moonAltitude.radians() <= 0) {
            return new Moonlight(0);
        }
        double phaseDeg = phaseAngle.abs().degrees();
        double outside = Math.pow(10, -0.4 * (3.84 + 0.026 * phaseDeg + 4e-9 * Math.pow(phaseDeg, 4)));
        return new Moonlight(outside * Math.pow(10, -0.4 * EXTINCTION * airMass(moonAltitude)));
    }

    /**
     * Brightness of the sky, V magnitudes per square arcsecond.
     *
     * @param altitude of the direction, above 0
     * @param distance from the Moon to that direction
     */
    public double sky(Angle altitude, Angle distance) {
        double airMass = airMass(altitude);
        double kept = Math.pow(10, -0.4 * EXTINCTION * airMass);
        double dark = DARK_NANOLAMBERTS * kept * KEPT_IN_ZENITH * airMass;
        return magnitude(dark + (illuminance == 0 ? 0 : scattered(distance) * illuminance * (1 - kept)));
    }

    /** Rayleigh scattering, plus Mie scattering with one form within 10° of the Moon and another beyond. */
    private static double scattered(Angle distance) {
        double distanceDeg = Math.max(distance.degrees(), 1);
        double cosine = Math.cos(Math.toRadians(distanceDeg));
        double mie = distanceDeg >= 10 ? Math.pow(10, 6.15 - distanceDeg / 40) : 6.2e7 / (distanceDeg * distanceDeg);
        return RAYLEIGH * (1.06 + cosine * cosine) + mie;
    }

    /** The paper's own formula, finite at the horizon: (1 − 0.96 sin² z)^−½. */
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
