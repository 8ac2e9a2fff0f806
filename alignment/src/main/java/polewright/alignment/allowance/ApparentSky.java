package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.place.Refraction;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SiderealRate;

/**
 * The apparent sky over a site: diurnal rotation, diurnal aberration and refraction.
 *
 * <p>Apparent places of date are constant except for diurnal aberration (0.32″ cos φ toward the east): annual
 * aberration and nutation change them by less than 0.02″ in an hour.
 */
final class ApparentSky {
    /** Equatorial rotation speed divided by the speed of light: 465.1 m/s / 299 792 458 m/s. */
    private static final double DIURNAL_ABERRATION_RAD = 1.5514e-6;

    private final Site site;
    private final Refraction refraction;
    private final Vector3D northPole;

    ApparentSky(Site site, Weather weather) {
        this.site = site;
        this.refraction = new Refraction(weather);
        this.northPole = new Vector3D(0, site.latitude().cos(), site.latitude().sin());
    }

    Site site() {
        return site;
    }

    /** ENU unit vector without refraction. */
    Vector3D airless(double hourAngleRad, double declinationRad) {
        double cosDec = Math.cos(declinationRad);
        return new Vector3D(
                Math.sin(declinationRad),
                northPole,
                cosDec * Math.cos(hourAngleRad),
                AxisPointing.upDirection(site),
                -cosDec * Math.sin(hourAngleRad),
                Vector3D.PLUS_I);
    }

    /** Cosine of a direction's declination, refracted or not. */
    double cosDeclination(Vector3D direction) {
        return northPole.crossProduct(direction).getNorm();
    }

    /** The unrefracted direction of a star some seconds later. */
    Vector3D later(Vector3D airless, double seconds) {
        return RodriguesRotation.about(northPole, airless, -SiderealRate.RAD_PER_SECOND * seconds);
    }

    /**
     * The direction at a distance from another, at a position angle from north through east. Both without refraction.
     */
    Vector3D atDistance(Vector3D airless, double distanceRad, double positionAngleRad) {
        Vector3D cross = northPole.crossProduct(airless);
        Vector3D east = cross.getNorm() < 1e-9 ? airless.orthogonal() : cross.normalize();
        return new Vector3D(
                Math.cos(distanceRad),
                airless,
                Math.sin(distanceRad) * Math.cos(positionAngleRad),
                airless.crossProduct(east),
                Math.sin(distanceRad) * Math.sin(positionAngleRad),
                east);
    }

    /** The refracted, aberrated direction of a star given without refraction. */
    Vector3D seen(Vector3D airless) {
        double east = airless.getX() + DIURNAL_ABERRATION_RAD * site.latitude().cos();
        double horizontal = Math.hypot(east, airless.getY());
        double altitude = Math.atan2(airless.getZ(), horizontal);
        double apparent = altitude + refraction.lift(new Angle(altitude)).radians();
        double scale = horizontal > 0 ? Math.cos(apparent) / horizontal : 0;
        return new Vector3D(east * scale, airless.getY() * scale, Math.sin(apparent));
    }
}
