package polewright.sky.almanac;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.body.BodyAppearance;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ObservingMoment;

/**
 * The phase of the Moon as seen from the site.
 *
 * @param elongation from the Sun's centre, 0 to 180°
 * @param phaseAngle angle Sun–Moon–observer: 0 at full
 * @param litShare illuminated fraction of the disc, 0 to 1
 * @param isWaxing east of the Sun along the ecliptic
 */
public record LunarPhase(Angle elongation, Angle phaseAngle, double litShare, boolean isWaxing) {
    /**
     * North pole of the ecliptic in equatorial axes. An obliquity of 23.44° is good for two centuries: only a sign is
     * needed.
     */
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
     * The phase as a noun or as an adjective to "Moon", e.g. {@code "waxing gibbous"}. New and full mean within 1 % of
     * the illuminated fraction (a day or so), the quarters within 5 % (half a day): almanacs give instants, whereas
     * this describes a whole night.
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
