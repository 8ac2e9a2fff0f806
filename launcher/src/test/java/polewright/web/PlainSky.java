package polewright.web;

import java.time.Duration;
import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisOffset;
import polewright.sky.place.CatalogueStar;

/**
 * The stars over one site by short textbook formulas: precession (Lieske and others 1977, linear terms), mean sidereal
 * time (Aoki and others 1982), refraction (58.29″ tan z − 0.067″ tan³ z, after the Astronomical Almanac, for the air
 * at 240 m), as in ERFA, src/prec76.c, 1d9738bed995, and soniakeys/meeus, v3, bfbd9ac2c7f7. Aberration and nutation
 * are omitted: they move stars by 20″ and do not change their drift. East, north, up.
 */
record PlainSky(double latitudeDeg, double longitudeDeg) {
    private static final Instant J2000 = Instant.parse("2000-01-01T12:00:00Z");
    private static final double SIDEREAL_RAD_PER_S = 2 * Math.PI / 86164.0905;
    private static final double REFRACTION_HERE = 0.97;
    private static final double ARCSEC = Math.toDegrees(1) * 3600;

    private Vector3D pole() {
        double latitude = Math.toRadians(latitudeDeg);
        return new Vector3D(0, Math.cos(latitude), Math.sin(latitude));
    }

    /** East and up components, as sines. */
    AxisOffset offset(Vector3D axis) {
        Vector3D up = Vector3D.PLUS_I.crossProduct(pole());
        return AxisOffset.ofArcminutes(
                60 * Math.toDegrees(axis.dotProduct(Vector3D.PLUS_I)), 60 * Math.toDegrees(axis.dotProduct(up)));
    }

    /** With refraction. */
    Vector3D seen(CatalogueStar star, Instant at) {
        return refracted(airless(star, at));
    }

    private Vector3D airless(CatalogueStar star, Instant at) {
        double days = Duration.between(J2000, at).toMillis() / 86_400_000.0;
        double centuries = days / 36525;
        double zeta = Math.toRadians(0.6406161 * centuries);
        double theta = Math.toRadians(0.5567530 * centuries);
        double ra = star.rightAscension().radians() + zeta;
        double dec = star.declination().radians();
        double x = Math.cos(theta) * Math.cos(dec) * Math.cos(ra) - Math.sin(theta) * Math.sin(dec);
        double y = Math.cos(dec) * Math.sin(ra);
        double z = Math.sin(theta) * Math.cos(dec) * Math.cos(ra) + Math.cos(theta) * Math.sin(dec);
        double raOfDate = Math.atan2(y, x) + zeta;
        double sidereal = Math.toRadians(280.46061837 + 360.98564736629 * days + longitudeDeg);
        double hourAngle = sidereal - raOfDate;
        double latitude = Math.toRadians(latitudeDeg);
        double across = Math.hypot(x, y);
        return new Vector3D(
                -across * Math.sin(hourAngle),
                z * Math.cos(latitude) - across * Math.cos(hourAngle) * Math.sin(latitude),
                z * Math.sin(latitude) + across * Math.cos(hourAngle) * Math.cos(latitude));
    }

    private static Vector3D refracted(Vector3D airless) {
        double altitude = Math.asin(airless.getZ());
        double tangent = 1 / Math.tan(altitude);
        double raised = altitude + REFRACTION_HERE * (58.29 * tangent - 0.067 * Math.pow(tangent, 3)) / ARCSEC;
        double shorter = Math.cos(raised) / Math.hypot(airless.getX(), airless.getY());
        return new Vector3D(airless.getX() * shorter, airless.getY() * shorter, Math.sin(raised));
    }

    /**
     * The northward drift of a star tracked about this axis, across a line along its trail at the start.
     *
     * @param axis the northern end
     */
    double northwardArcsec(Vector3D axis, CatalogueStar star, Instant from, Duration watched) {
        Vector3D start = seen(star, from);
        Vector3D soon = seen(star, from.plusSeconds(10));
        // The sky moves a star west; north is to the right of that when looking up at it.
        Vector3D north = soon.subtract(start).normalize().crossProduct(start).normalize();
        if (north.dotProduct(pole().subtract(start.scalarMultiply(pole().dotProduct(start)))) < 0) {
            north = north.negate();
        }
        double angle = -SIDEREAL_RAD_PER_S * watched.toMillis() / 1000.0;
        Rotation tracking = new Rotation(axis, angle, RotationConvention.VECTOR_OPERATOR);
        Vector3D drift = seen(star, from.plus(watched)).subtract(tracking.applyTo(start));
        return drift.dotProduct(tracking.applyTo(north)) * ARCSEC;
    }
}
