package polewright.sky.atlas;

import polewright.sky.place.CatalogueStar;

/** Applies proper motion alone to a star's position. */
final class StarMotion {
    private static final double RAD_PER_MAS = Math.PI / (180 * 3600 * 1000.0);

    private StarMotion() {}

    /**
     * Linear motion in the tangent plane at the J2000.0 position, then projected back onto the sphere. Radial velocity
     * (0.3″ in a century for the nearest stars) and parallax (0.8″ at most) are left out.
     *
     * @param years Julian years since J2000.0
     * @param into receives the ICRS unit vector, three numbers
     */
    static void direction(CatalogueStar star, double years, double[] into) {
        double ra = star.rightAscension().radians();
        double dec = star.declination().radians();
        double east = star.properMotionRaMasPerYear() * RAD_PER_MAS * years;
        double north = star.properMotionDecMasPerYear() * RAD_PER_MAS * years;
        double x = Math.cos(dec) * Math.cos(ra) - east * Math.sin(ra) - north * Math.sin(dec) * Math.cos(ra);
        double y = Math.cos(dec) * Math.sin(ra) + east * Math.cos(ra) - north * Math.sin(dec) * Math.sin(ra);
        double z = Math.sin(dec) + north * Math.cos(dec);
        double length = Math.sqrt(x * x + y * y + z * z);
        into[0] = x / length;
        into[1] = y / length;
        into[2] = z / length;
    }
}
