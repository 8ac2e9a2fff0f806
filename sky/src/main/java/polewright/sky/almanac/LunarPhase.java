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
 * @param isWaxing east of the Sun along the ecliptic
 */
public record LunarPhase(Angle elongation, Angle phaseAngle, double litShare, boolean isWaxing) {
    /** North pole of the ecliptic in equatorial axes; 23.44° serves two centuries, for only a sign is asked. */
    private static final Vector3D ECLIPTIC_POLE =
            new Vector3D(0, -Math.sin(Math.toRadians(23.44)), Math.cos(Math.toRadians(23.44)));

    private static final double NEARLY_NONE = 0.01;
    private static final double NEARLY_HALF = 0.05;

    public static LunarPhase at(ObservingMoment moment) {
        BodyAppearance moon = SolarSystem.appearance(SolarSystemBody.MOON, moment);
        BodyAppearance sun = SolarSystem.appearance(SolarSystemBody.SUN, moment);
        Vector3D toMoon = moon.place().unit().scalarMultiply(moon.distanceAu());
        Vector3D toSun = sun.place().unit().scalarMultiply(sun.distanceAu());
        Angle phaseAngle = new Angle(Vector3D.angle(toSun.subtract(toMoon), toMoon.negate()));
        return new LunarPhase(
                moon.place().separation(sun.place()),
                phaseAngle,
                (1 + phaseAngle.cos()) / 2,
                toSun.crossProduct(toMoon).dotProduct(ECLIPTIC_POLE) >= 0);
    }

    /**
     * The phase's name as a noun or an adjective to "Moon", e.g. {@code "waxing gibbous"}. New and full are within 1 % of
     * it lit (a day or so), the quarters within 5 % (half a day): the almanacs have moments, a person has a night.
     */
    public String words() {
        if (litShare < NEARLY_NONE) {
            return "new";
        }
        if (litShare > 1 - NEARLY_NONE) {
            return "full";
        }
        if (Math.abs(litShare - 0.5) < NEARLY_HALF) {
            return isWaxing ? "first quarter" : "last quarter";
        }
        return (isWaxing ? "waxing " : "waning ") + (litShare < 0.5 ? "crescent" : "gibbous");
    }
}
