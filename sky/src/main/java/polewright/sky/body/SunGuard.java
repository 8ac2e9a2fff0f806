package polewright.sky.body;

import java.time.Duration;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SiderealRate;

/**
 * The distance of a direction, or of a slew, from the Sun at one moment.
 *
 * <p>Every distance is to the limb, not the centre: negative inside the disc. Directions are compared without
 * refraction. Near the horizon both the Sun and the target are lifted, so the error is a few arcminutes there and
 * negligible elsewhere.
 *
 * <p>The caller chooses the keep-out distance. The usual cautions apply as well: a purpose-made filter over the front
 * of the tube, the finder covered, and no one at the eyepiece.
 */
public final class SunGuard {
    /** Distance to keep from the Sun's limb while it is up, unless filtered (common practice). */
    public static final Angle KEEP_AWAY = Angle.ofDegrees(30);

    /** Altitude of the Sun's centre at which its upper limb rises or sets: −50′, the almanacs' convention. */
    private static final Angle RISING_ALTITUDE = Angle.ofArcminutes(-50);

    private final ObservingMoment moment;
    private final AirlessDirection sun;
    private final Angle semiDiameter;

    private SunGuard(ObservingMoment moment) {
        this.moment = moment;
        BodyAppearance appearance = SolarSystem.appearance(SolarSystemBody.SUN, moment);
        this.sun = moment.airless(appearance.place());
        this.semiDiameter = appearance.semiDiameter();
    }

    public static SunGuard at(ObservingMoment moment) {
        return new SunGuard(moment);
    }

    /** Direction of the Sun's centre. */
    public AirlessDirection sun() {
        return sun;
    }

    /** Angular semidiameter of the Sun: 0.262° to 0.271°. */
    public Angle semiDiameter() {
        return semiDiameter;
    }

    /** Whether any of the disc is above a sea horizon. */
    public boolean isSunUp() {
        return sun.altitude().compareTo(RISING_ALTITUDE) > 0;
    }

    /** From the limb to a direction. */
    public Angle distance(AirlessDirection direction) {
        return fromEdge(angle(direction.enu(), sun.enu()));
    }

    /** The smallest distance on the shorter great-circle arc between two directions, ends included. */
    public Angle nearestOnArc(AirlessDirection from, AirlessDirection to) {
        Vector3D u = from.enu();
        Vector3D v = to.enu();
        double nearest = Math.min(angle(u, sun.enu()), angle(v, sun.enu()));
        Vector3D pole = Vector3D.crossProduct(u, v);
        if (pole.getNorm() > 0) {
            Vector3D normal = pole.normalize();
            double offPlane = Vector3D.dotProduct(sun.enu(), normal);
            Vector3D foot = sun.enu().subtract(normal.scalarMultiply(offPlane));
            boolean footOnArc = Vector3D.dotProduct(Vector3D.crossProduct(u, foot), normal) >= 0
                    && Vector3D.dotProduct(Vector3D.crossProduct(foot, v), normal) >= 0;
            if (footOnArc) {
                nearest = Math.min(nearest, Math.atan2(Math.abs(offPlane), foot.getNorm()));
            }
        }
        return fromEdge(nearest);
    }

    /**
     * The smallest distance on a path of great-circle arcs through many directions. For a slew of two axes at once,
     * give a direction for every half degree of the faster axis.
     *
     * @param path at least one direction
     */
    public Angle nearestOnPath(List<AirlessDirection> path) {
        if (path.isEmpty()) {
            throw new IllegalArgumentException("an empty path is nowhere near anything");
        }
        Angle nearest = distance(path.get(0));
        for (int i = 1; i < path.size(); i++) {
            Angle leg = nearestOnArc(path.get(i - 1), path.get(i));
            nearest = leg.compareTo(nearest) < 0 ? leg : nearest;
        }
        return nearest;
    }

    /**
     * The smallest distance while the telescope is stationary and the Sun moves on, 15.041° an hour about the pole. The
     * Sun's own motion against the stars (2.5′ an hour) is left out, which errs on the safe side for an approaching
     * Sun.
     */
    public Angle nearestWhileStationary(AirlessDirection direction, Duration duration) {
        if (duration.isNegative()) {
            throw new IllegalArgumentException("a negative duration: " + duration);
        }
        HourAnglePlace still = moment.hourAngle(direction);
        HourAnglePlace sunNow = moment.hourAngle(sun);
        Angle turned = SiderealRate.during(duration.toMillis() / 1000.0);
        // The distance grows with the difference in hour angle: the minimum is where the Sun passes the telescope's
        // hour angle, or at one of the ends.
        Angle untilPassing = still.hourAngle().minus(sunNow.hourAngle()).wrappedPositive();
        if (untilPassing.compareTo(turned) <= 0) {
            return fromEdge(
                    Math.abs(still.declination().minus(sunNow.declination()).radians()));
        }
        AirlessDirection sunThen =
                moment.airless(new HourAnglePlace(sunNow.hourAngle().plus(turned), sunNow.declination()));
        return fromEdge(Math.min(angle(direction.enu(), sun.enu()), angle(direction.enu(), sunThen.enu())));
    }

    private Angle fromEdge(double fromCentreRad) {
        return new Angle(fromCentreRad).minus(semiDiameter);
    }

    /** The form with atan2 is accurate at all angles; an arc cosine loses half its digits near zero. */
    private static double angle(Vector3D u, Vector3D v) {
        return Math.atan2(Vector3D.crossProduct(u, v).getNorm(), Vector3D.dotProduct(u, v));
    }
}
