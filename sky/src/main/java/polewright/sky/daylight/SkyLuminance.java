package polewright.sky.daylight;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;

/**
 * Luminance of a clear sky without moonlight or light pollution, cd/m².
 *
 * <p>At the zenith, as a function of the Sun's altitude γ in degrees:
 *
 * <table>
 * <caption>Zenith</caption>
 * <tr><td>γ ≥ 0</td><td>100 + 63 γ + γ (γ − 30) exp(0.0346 (γ − 68)) cd/m²: J. Krochmann, Lichttechnik 22 (1970) 551,
 * from memory</td></tr>
 * <tr><td>−5 to 0</td><td>linear in the logarithm between its neighbours, our own choice</td></tr>
 * <tr><td>−15 to −5</td><td>V = 11.84 + 1.518 x − 0.057 x² mag/arcsec², x = −γ − 5: F. Patat, O. S. Ugolnikov and O. V.
 * Postylyakov, A&amp;A 455 (2006) 385, table of twilight fits, as in wfthi/AstronomyObservationTools, moon.py,
 * 89ce33a36a65</td></tr>
 * <tr><td>−18 to −15</td><td>linear in magnitudes to the night value</td></tr>
 * <tr><td>below −18</td><td>21.6 mag/arcsec², a dark country sky (common practice)</td></tr>
 * </table>
 *
 * <p>Elsewhere, relative to the zenith: the CIE clear sky with low turbidity (ISO 15469:2004, CIE S 011, type 12): (1 +
 * a exp(b / cos Z)) (1 + c (exp(d χ) − exp(d π/2)) + e cos² χ), Z the zenith distance and χ the distance from the Sun,
 * a = −1, b = −0.32, c = 10, d = −3, e = 0.45 (as in openalea/astk, sky_luminance.py, ef56859c9808). The standard is
 * for the Sun above the horizon; below it this ratio fades out linearly in magnitudes until −18°, our own choice. Haze,
 * snow and altitude above sea level are left out: half a magnitude either way.
 */
public final class SkyLuminance {
    /** Luminance of a sky of 0 mag/arcsec², cd/m² (common practice). */
    static final double ZERO_MAGNITUDE_CD_PER_M2 = 1.08e5;

    private static final double NIGHT_MAGNITUDE = 21.6;
    private static final double TWILIGHT_FROM_DEG = -5;
    private static final double TWILIGHT_TO_DEG = -15;
    private static final double NIGHT_FROM_DEG = -18;

    private SkyLuminance() {}

    /**
     * At the zenith, cd/m².
     *
     * @param sunAltitude without refraction
     */
    public static double zenith(Angle sunAltitude) {
        double gamma = sunAltitude.degrees();
        if (gamma >= 0) {
            return 100 + 63 * gamma + gamma * (gamma - 30) * Math.exp(0.0346 * (gamma - 68));
        }
        if (gamma >= TWILIGHT_FROM_DEG) {
            double share = gamma / TWILIGHT_FROM_DEG;
            return Math.exp((1 - share) * Math.log(100) + share * Math.log(ofMagnitude(twilight(TWILIGHT_FROM_DEG))));
        }
        if (gamma >= TWILIGHT_TO_DEG) {
            return ofMagnitude(twilight(gamma));
        }
        double share = Math.min(1, (TWILIGHT_TO_DEG - gamma) / (TWILIGHT_TO_DEG - NIGHT_FROM_DEG));
        return ofMagnitude((1 - share) * twilight(TWILIGHT_TO_DEG) + share * NIGHT_MAGNITUDE);
    }

    /**
     * In a direction, cd/m².
     *
     * @param look above the horizon; anything lower is taken as 1° up
     * @param sun centre of the Sun, wherever it is
     */
    public static double toward(AirlessDirection look, AirlessDirection sun) {
        double cosZenithDistance =
                Math.max(look.enu().getZ(), Angle.ofDegrees(1).sin());
        double fromSunRad = Vector3D.angle(look.enu(), sun.enu());
        double sunFromZenithRad = Math.PI / 2 - sun.altitude().radians();
        double ratio =
                gradation(cosZenithDistance) * scattering(fromSunRad) / (gradation(1) * scattering(sunFromZenithRad));
        double faded = Math.min(1, Math.max(0, sun.altitude().degrees() / NIGHT_FROM_DEG));
        return zenith(sun.altitude()) * Math.pow(ratio, 1 - faded);
    }

    private static double gradation(double cosZenithDistance) {
        return 1 - Math.exp(-0.32 / cosZenithDistance);
    }

    private static double scattering(double fromSunRad) {
        double cos = Math.cos(fromSunRad);
        return 1 + 10 * (Math.exp(-3 * fromSunRad) - Math.exp(-3 * Math.PI / 2)) + 0.45 * cos * cos;
    }

    private static double twilight(double sunAltitudeDeg) {
        double x = -sunAltitudeDeg - 5;
        return 11.84 + 1.518 * x - 0.057 * x * x;
    }

    private static double ofMagnitude(double magnitudePerSquareArcsec) {
        return ZERO_MAGNITUDE_CD_PER_M2 * Math.pow(10, -0.4 * magnitudePerSquareArcsec);
    }
}
