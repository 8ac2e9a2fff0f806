package polewright.sky.body;

import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Apparent V magnitudes of the planets.
 *
 * <p>Source: A. Mallama and J. L. Hilton, <i>Computing apparent planetary magnitudes for The Astronomical Almanac</i>,
 * Astronomy and Computing 25 (2018) 10; constants as in the general-purpose library Skyfield 1.45 (MIT licence),
 * against which they are tested. Left out: the rotation and season of Mars (0.06 magnitudes), and phases not seen from
 * Earth. The poles of Saturn and Uranus are those of J2000.0: the tilt of the rings changes by 0.3° in a lifetime.
 */
final class PlanetMagnitude {
    private static final Vector3D SATURN_POLE = new Vector3D(0.08547883, 0.07323576, 0.99364475);
    private static final Vector3D URANUS_POLE = new Vector3D(-0.21199958, -0.94155916, -0.26176809);

    private PlanetMagnitude() {}

    /**
     * @param fromSun from the Sun to the planet, au, equatorial axes
     * @param toPlanet from the observer to the planet, au, same axes
     * @param phaseDeg phase angle, degrees
     * @param year Julian year, for Neptune, whose brightness has changed
     */
    static OptionalDouble of(
            SolarSystemBody planet, Vector3D fromSun, Vector3D toPlanet, double phaseDeg, double year) {
        double atUnitDistance = switch (planet) {
            case MERCURY ->
                -0.613 + polynomial(phaseDeg, 0, 6.3280e-2, -1.6336e-3, 3.3644e-5, -3.4265e-7, 1.6893e-9, -3.0334e-12);
            case VENUS ->
                -4.384
                        + (phaseDeg < 163.7
                                ? polynomial(phaseDeg, 0, -1.044e-3, 3.687e-4, -2.814e-6, 8.938e-9)
                                : polynomial(phaseDeg, 236.05828 + 4.384, -2.81914, 8.39034e-3));
            case MARS ->
                phaseDeg <= 50
                        ? -1.601 + polynomial(phaseDeg, 0, 2.267e-2, -1.302e-4)
                        : -0.367 + polynomial(phaseDeg, 0, -0.02573, 3.445e-4);
            case JUPITER -> -9.395 + polynomial(phaseDeg, 0, -3.7e-4, 6.16e-4);
            case SATURN -> saturn(fromSun, toPlanet, phaseDeg);
            case URANUS ->
                -7.110
                        - 0.00084
                                * (Math.abs(latitudeDeg(URANUS_POLE, fromSun))
                                        + Math.abs(latitudeDeg(URANUS_POLE, toPlanet)))
                                / 2;
            case NEPTUNE -> neptune(phaseDeg, year);
            case SUN, MOON -> throw new IllegalArgumentException(planet + " is not a planet");
        };
        return Double.isNaN(atUnitDistance)
                ? OptionalDouble.empty()
                : OptionalDouble.of(atUnitDistance + 5 * Math.log10(fromSun.getNorm() * toPlanet.getNorm()));
    }

    /**
     * Globe and rings. The formula ends at a phase angle of 6.5° and a tilt of 27°, the limits of Saturn seen from
     * Earth.
     */
    private static double saturn(Vector3D fromSun, Vector3D toPlanet, double phaseDeg) {
        double product = latitudeDeg(SATURN_POLE, fromSun) * latitudeDeg(SATURN_POLE, toPlanet);
        double tilt = Math.toRadians(product >= 0 ? Math.sqrt(product) : 0);
        if (phaseDeg > 6.5 || Math.toDegrees(tilt) > 27) {
            return Double.NaN;
        }
        return -8.914 - 1.825 * Math.sin(tilt) + 0.026 * phaseDeg - 0.378 * Math.sin(tilt) * Math.exp(-2.25 * phaseDeg);
    }

    /**
     * It brightened from 1980 to 2000. The phase term starts at 1.9°, about the largest phase angle seen from Earth.
     */
    private static double neptune(double phaseDeg, double year) {
        double full = Math.max(-7.00, Math.min(-6.89, -6.89 - 0.0054 * (year - 1980)));
        return phaseDeg > 1.9 ? full + polynomial(phaseDeg, 0, 7.944e-3, 9.617e-5) : full;
    }

    private static double latitudeDeg(Vector3D pole, Vector3D direction) {
        return Math.toDegrees(Vector3D.angle(pole, direction)) - 90;
    }

    private static double polynomial(double x, double... coefficients) {
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * x + coefficients[i];
        }
        return sum;
    }
}
