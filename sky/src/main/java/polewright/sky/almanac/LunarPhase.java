package polewright.sky.almanac;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.body.BodyAppearance;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ObservingMoment;

/**
 * How much of the Moon is lit, as seen from the site.
 *
 * @param elongation from the Sun's centre, 0 to 180°
 * @param phaseAngle Sun, Moon, observer: 0 at full
 * @param litShare of the disc, 0 to 1
 * @param isWaxing east of the Sun
 */
public record LunarPhase(Angle elongation, Angle phaseAngle, double litShare, boolean isWaxing) {
    public static LunarPhase at(ObservingMoment moment) {
        BodyAppearance moon = SolarSystem.appearance(SolarSystemBody.MOON, moment);
        BodyAppearance sun = SolarSystem.appearance(SolarSystemBody.SUN, moment);
        Vector3D toMoon = moon.place().unit().scalarMultiply(moon.distanceAu());
        Vector3D toSun = sun.place().unit().scalarMultiply(sun.distanceAu());
        Angle phaseAngle = new Angle(Vector3D.angle(toSun.subtract(toMoon), toMoon.negate()));
        Angle east = moon.place().rightAscension().minus(sun.place().rightAscension());
        return new LunarPhase(
                moon.place().separation(sun.place()),
                phaseAngle,
                (1 + phaseAngle.cos()) / 2,
                east.wrappedSigned().radians() >= 0);
    }
}
