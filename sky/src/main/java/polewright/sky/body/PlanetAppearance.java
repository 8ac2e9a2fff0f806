package polewright.sky.body;

import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.ObservingMoment;

/**
 * How a planet looks: its brightness, size and phase.
 *
 * @param magnitude V; empty outside the range of the published formula (Saturn never is, seen from Earth)
 * @param diameter equatorial angular diameter
 * @param phaseAngle angle Sun–planet–observer
 * @param litShare illuminated fraction of the disc, 0 to 1
 * @param elongation from the Sun's centre
 */
public record PlanetAppearance(
        OptionalDouble magnitude, Angle diameter, Angle phaseAngle, double litShare, Angle elongation) {
    public static PlanetAppearance at(SolarSystemBody planet, ObservingMoment moment) {
        if (!planet.isPlanet()) {
            throw new IllegalArgumentException(planet + " is not a planet");
        }
        BodyAppearance seen = SolarSystem.appearance(planet, moment);
        BodyAppearance sun = SolarSystem.appearance(SolarSystemBody.SUN, moment);
        Vector3D toPlanet = seen.place().unit().scalarMultiply(seen.distanceAu());
        Vector3D fromSun = toPlanet.subtract(sun.place().unit().scalarMultiply(sun.distanceAu()));
        Angle phaseAngle = new Angle(Vector3D.angle(fromSun, toPlanet));
        double year = 2000 + (moment.tt().day() + moment.tt().fraction() - 2451545.0) / 365.25;
        return new PlanetAppearance(
                PlanetMagnitude.of(planet, fromSun, toPlanet, phaseAngle.degrees(), year),
                seen.semiDiameter().times(2),
                phaseAngle,
                (1 + phaseAngle.cos()) / 2,
                seen.place().separation(sun.place()));
    }
}
