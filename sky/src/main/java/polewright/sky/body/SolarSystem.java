package polewright.sky.body;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jastronomy.jsofa.JSOFA;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.EarthMotion;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.JulianDate;

/**
 * Apparent places of the Sun, the Moon and the planets from a site.
 *
 * <p>Included: the site's position on the rotating Earth (parallax: up to 1° for the Moon), light time, annual and
 * diurnal aberration, precession and nutation. Left out: light deflection (under 0.02″ more than 30° from the Sun, 0.5″
 * at 1°), the difference of TDB from TT (2 ms), the phase of the disc (places are of its centre). Accuracy of each
 * body: {@link SolarSystemBody}.
 *
 * <p>Theories: Earth and barycentre, {@link EarthMotion}; Moon, {@code iauMoon98}; planets, {@link HeliocentricSeries}.
 */
public final class SolarSystem {
    /** Light time for one astronomical unit, days (IAU 2012 Resolution B2 and the defined speed of light). */
    private static final double LIGHT_DAYS_PER_AU = 149_597_870_700.0 / 299_792_458.0 / 86_400;

    private SolarSystem() {}

    public static ApparentPlace apparent(SolarSystemBody body, ObservingMoment moment) {
        return appearance(body, moment).place();
    }

    public static BodyAppearance appearance(SolarSystemBody body, ObservingMoment moment) {
        Vector3D toward = towardAu(body, moment.tt(), moment.observerBarycentricAu());
        return new BodyAppearance(body, moment.apparentOfNearBody(toward), toward.getNorm());
    }

    /**
     * Vector from an observer to a body at the time when the light now arriving left it, au, BCRS axes.
     *
     * @param observerAu the observer from the barycentre, au, BCRS axes
     */
    static Vector3D towardAu(SolarSystemBody body, JulianDate tt, Vector3D observerAu) {
        double lightDays = 0;
        Vector3D toward = Vector3D.ZERO;
        // A body moves less than 1e-4 of its distance in its light time, so each iteration gains four figures.
        for (int round = 0; round < 3; round++) {
            toward = barycentricAu(body, earlier(tt, lightDays)).subtract(observerAu);
            lightDays = toward.getNorm() * LIGHT_DAYS_PER_AU;
        }
        return toward;
    }

    private static Vector3D barycentricAu(SolarSystemBody body, JulianDate tt) {
        EarthMotion earth = EarthMotion.at(tt);
        if (body == SolarSystemBody.MOON) {
            return earth.fromBarycentreAu().add(new Vector3D(JSOFA.jauMoon98(tt.day(), tt.fraction())[0]));
        }
        Vector3D sun = earth.fromBarycentreAu().subtract(earth.fromSunAu());
        return body == SolarSystemBody.SUN
                ? sun
                : sun.add(HeliocentricSeries.of(body).heliocentricAu(tt));
    }

    private static JulianDate earlier(JulianDate date, double days) {
        return new JulianDate(date.scale(), date.day(), date.fraction() - days);
    }
}
