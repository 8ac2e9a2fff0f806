package polewright.sky.place;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;

/**
 * The apparent place of a body from the site, without refraction: topocentric, aberration (annual and diurnal) and
 * light deflection applied, referred to the true equator and equinox of date.
 *
 * @param unit unit vector, x toward the true equinox, z toward the true north pole of date
 */
public record ApparentPlace(Vector3D unit) {
    public static ApparentPlace of(Angle rightAscension, Angle declination) {
        return new ApparentPlace(Spherical.unit(rightAscension, declination));
    }

    /** Right ascension from the true equinox of date, [0, 24 h). */
    public Angle rightAscension() {
        return Spherical.longitude(unit);
    }

    public Angle declination() {
        return Spherical.latitude(unit);
    }

    /** Angle on the sky to another place. */
    public Angle separation(ApparentPlace other) {
        return new Angle(Vector3D.angle(unit, other.unit));
    }
}
