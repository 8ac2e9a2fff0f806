package polewright.sky.place;

import org.jastronomy.jsofa.JSOFA;
import org.jastronomy.jsofa.JSOFAException;
import polewright.sky.time.JulianDate;

/**
 * The celestial intermediate pole by the IAU 2006 precession and the IAU 2000A nutation of {@link Nutation}.
 *
 * @param x of the pole, ICRS unit vector
 * @param y of the pole, ICRS unit vector
 * @param s the CIO locator, radians
 * @param equationOfOriginsRad the intermediate right ascension of the equinox of date, with its sign changed
 */
record CelestialPole(double x, double y, double s, double equationOfOriginsRad) {
    static CelestialPole at(JulianDate tt) {
        Nutation nutation = Nutation.at(tt);
        var precession = JSOFA.jauPfw06(tt.day(), tt.fraction());
        double[][] matrix = JSOFA.jauFw2m(
                precession.gamb,
                precession.phib,
                precession.psib + nutation.longitudeRad(),
                precession.epsa + nutation.obliquityRad());
        var pole = JSOFA.jauBpn2xy(matrix);
        double locator = JSOFA.jauS06(tt.day(), tt.fraction(), pole.x, pole.y);
        return new CelestialPole(pole.x, pole.y, locator, JSOFA.jauEors(matrix, locator));
    }

    /**
     * The star-independent parameters for a site and time with this pole: the steps of SOFA's {@code iauApco13},
     * without refraction and polar motion.
     *
     * @param earthRotation Earth rotation angle, radians
     */
    JSOFA.Astrom astrometry(Site site, JulianDate tt, double earthRotation) {
        EarthMotion earth = EarthMotion.at(tt);
        JSOFA.Astrom astrom = new JSOFA.Astrom();
        try {
            JSOFA.jauApco(
                    tt.day(),
                    tt.fraction(),
                    new double[][] {
                        earth.fromBarycentreAu().toArray(),
                        earth.velocityAuPerDay().toArray()
                    },
                    earth.fromSunAu().toArray(),
                    x,
                    y,
                    s,
                    earthRotation,
                    site.longitude().radians(),
                    site.latitude().radians(),
                    site.heightMetres(),
                    0,
                    0,
                    JSOFA.jauSp00(tt.day(), tt.fraction()),
                    0,
                    0,
                    astrom);
        } catch (JSOFAException e) {
            throw new IllegalStateException("SOFA refused " + tt + " at " + site, e);
        }
        return astrom;
    }
}
