package polewright.sky.place;

import org.jastronomy.jsofa.JSOFA;
import polewright.sky.angle.Angle;

/**
 * Atmospheric refraction.
 *
 * <p>At true altitudes above 8°: R = A tan z + B tan³ z with SOFA's constants ({@code iauRefco}; ray-tracing agreement
 * about 0.1″ at 10° altitude for 0.55 µm), z the apparent zenith distance. Below 3°: G. G. Bennett's handbook curve in
 * T. Sæmundsson's form, R = 1.02′ cot(h + 10.3/(h + 5.11)), scaled by pressure and temperature (J. Meeus,
 * <i>Astronomical Algorithms</i>, ch. 16; about 0.1′ in mean air). In between the two are blended, so that there is no
 * step. Below −1° the body is hidden by the Earth, and refraction fades to zero at −3°.
 */
public final class Refraction {
    private static final double WAVELENGTH_MICROMETRE = 0.55;
    private static final double THEORY_ABOVE_DEG = 8;
    private static final double HANDBOOK_BELOW_DEG = 3;
    private static final double FADES_BELOW_DEG = -1;
    private static final double GONE_BELOW_DEG = -3;

    private final double aRad;
    private final double bRad;
    private final double handbookScale;

    public Refraction(Weather weather) {
        var constants = JSOFA.jauRefco(
                weather.pressureHpa(), weather.temperatureC(), weather.relativeHumidity(), WAVELENGTH_MICROMETRE);
        aRad = constants.a;
        bRad = constants.b;
        handbookScale = weather.pressureHpa() / 1010 * 283 / (273 + weather.temperatureC());
    }

    /** Apparent minus true altitude, for a true (airless) altitude. Never negative. */
    public Angle lift(Angle trueAltitude) {
        double deg = trueAltitude.degrees();
        if (deg >= THEORY_ABOVE_DEG) {
            return new Angle(theoryRad(trueAltitude.radians()));
        }
        if (deg <= GONE_BELOW_DEG) {
            return Angle.ZERO;
        }
        double handbook = handbookRad(Math.max(deg, FADES_BELOW_DEG));
        if (deg < FADES_BELOW_DEG) {
            return new Angle(handbook * (deg - GONE_BELOW_DEG) / (FADES_BELOW_DEG - GONE_BELOW_DEG));
        }
        if (deg <= HANDBOOK_BELOW_DEG) {
            return new Angle(handbook);
        }
        double weight = (deg - HANDBOOK_BELOW_DEG) / (THEORY_ABOVE_DEG - HANDBOOK_BELOW_DEG);
        return new Angle(weight * theoryRad(trueAltitude.radians()) + (1 - weight) * handbook);
    }

    /** The true altitude seen at {@code apparentAltitude}; the inverse of {@link #lift} to 0.001″. */
    public Angle trueAltitude(Angle apparentAltitude) {
        double trueRad = apparentAltitude.radians();
        for (int i = 0; i < 50; i++) {
            double next = apparentAltitude.radians() - lift(new Angle(trueRad)).radians();
            // Refraction changes by less than half as much as altitude: halving the step prevents oscillation.
            double step =
                    0.5 * (next - trueRad) + (trueRad > Math.toRadians(THEORY_ABOVE_DEG) ? 0.5 * (next - trueRad) : 0);
            trueRad += step;
            if (Math.abs(step) < 1e-12) {
                break;
            }
        }
        return new Angle(trueRad);
    }

    private double theoryRad(double trueAltitudeRad) {
        // A and B apply to the apparent zenith distance, which is the unknown: two iterations converge to 1e-4".
        double zenithDistance = Math.PI / 2 - trueAltitudeRad;
        double lift = 0;
        for (int i = 0; i < 6; i++) {
            double tan = Math.tan(zenithDistance - lift);
            lift = tan * (aRad + bRad * tan * tan);
        }
        return Math.max(0, lift);
    }

    private double handbookRad(double trueAltitudeDeg) {
        double argument = Math.toRadians(trueAltitudeDeg + 10.3 / (trueAltitudeDeg + 5.11));
        return Math.toRadians(Math.max(0, 1.02 / Math.tan(argument)) / 60) * handbookScale;
    }
}
