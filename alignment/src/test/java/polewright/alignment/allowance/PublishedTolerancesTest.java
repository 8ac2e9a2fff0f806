package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.allowance.Items.LARKFELL;
import static polewright.alignment.allowance.Items.TINY;
import static polewright.alignment.allowance.Items.TUSSOCK_FLAT;
import static polewright.alignment.allowance.Items.UNGUIDED;
import static polewright.alignment.allowance.Items.along;
import static polewright.alignment.allowance.Items.at;
import static polewright.alignment.allowance.Items.shot;
import static polewright.alignment.allowance.Items.zone;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.work.Guiding;
import polewright.mount.rig.Camera;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Published formulas for tolerances, without refraction as intended. */
class PublishedTolerancesTest {
    /**
     * E = 45019 S cos δ / (T F A) arcminutes for a trail of S micrometres in T minutes at focal length F mm, A degrees
     * from the guide star to the far corner. Derived here; agrees with the form attributed to R. N. Hook, J. Br. astron.
     * Assoc. 99 (1989) 19, which a public quotation of 2003 gives in degrees with 750 (the paper itself was not read).
     */
    @ParameterizedTest
    @CsvSource({
        "0, 1000, 1.0, 20, 15",
        "45, 1000, 1.0, 20, 15",
        "60, 2000, 1.5, 10, 10",
        "-30, 600, 2.0, 15, 12",
        "-60, 1500, 1.2, 30, 20",
    })
    void guidedZone_hasTheWidthAttributedToHook(
            double decDeg, double focalMm, double farCornerDeg, double minutes, double trailMicrometres) {
        Camera camera = new Camera("camera", focalMm, 4, 3000, 2000);
        double halfDiagonalDeg = Math.toDegrees(Math.atan(Math.hypot(3000, 2000) / 2 * 0.004 / focalMm));
        // The position of the guide star is unspecified: δ is that of one on the pole's side of the picture.
        double guideDeg = Math.abs(decDeg) + farCornerDeg - halfDiagonalDeg;
        double expectedArcmin =
                45019 * trailMicrometres * Math.cos(Math.toRadians(guideDeg)) / (minutes * focalMm * farCornerDeg);
        double toleranceArcsec =
                Angle.ofRadians(trailMicrometres / 1000 / focalMm).arcseconds();
        Site site = decDeg < 0 ? TUSSOCK_FLAT : LARKFELL;
        Guiding guided = new Guiding.Guided(Angle.ofDegrees(farCornerDeg - halfDiagonalDeg));
        // From −70° to 70° of hour angle each direction of the offset becomes the worst in turn.
        WorkZone zone = zone(
                site, Weather.AIRLESS, shot(camera, along(-70, 70, decDeg), 60 * minutes, guided, toleranceArcsec));

        assertThat(zone.depth().arcminutes()).isCloseTo(expectedArcmin, within(0.02 * expectedArcmin));
    }

    /**
     * The classic constants, common practice: 1′ of offset drifts 0.26252″ per minute, an arcsecond per minute is
     * 3.81′. On the meridian the east offset drifts in declination, equally at all declinations.
     */
    @ParameterizedTest
    @CsvSource({"0, 1", "0, 3.81", "30, 1", "60, 1", "-20, 1", "-20, 3.81", "80, 1"})
    void unguidedZoneOnTheMeridian_hasTheEastWidthOfTheDriftConstant_atAnyDeclination(double decDeg, double arcmin) {
        double minutes = 2;
        double toleranceArcsec = arcmin == 3.81 ? minutes : 0.26252 * minutes;
        WorkZone zone =
                zone(LARKFELL, Weather.AIRLESS, shot(TINY, at(-0.25, decDeg), 60 * minutes, UNGUIDED, toleranceArcsec));

        assertThat(zone.eastSpan().high().arcminutes()).isCloseTo(arcmin, within(0.005 * arcmin));
        assertThat(zone.eastSpan().low().arcminutes()).isCloseTo(-arcmin, within(0.005 * arcmin));
    }

    /**
     * The same 6 h from the meridian, for an axis too high or too low; on the pole's side of the sky in the south too.
     */
    @ParameterizedTest
    @CsvSource({"54.6, 30, -90", "54.6, 30, 90", "-43.95, -40, -90", "-43.95, -40, 90"})
    void unguidedZoneSixHoursFromTheMeridian_hasThatWidthInUp(double latDeg, double decDeg, double haDeg) {
        WorkZone zone = zone(
                Site.ofDegrees(latDeg, 0, 0),
                Weather.AIRLESS,
                shot(TINY, at(haDeg - 0.25, decDeg), 120, UNGUIDED, 0.26252 * 2));
        double up = zone.edges().stream()
                .mapToDouble(edge -> edge.from().up().arcminutes())
                .max()
                .orElseThrow();

        assertThat(up).isCloseTo(1, within(0.005));
    }
}
