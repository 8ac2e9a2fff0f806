package polewright.sky.daylight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;

/** The contrast model against what observers report; half a magnitude is the tolerance required. */
class FaintestStarTest {
    private static final double HALF_A_MAGNITUDE = 0.5;

    private static AirlessDirection at(double azimuthDeg, double altitudeDeg) {
        return AirlessDirection.of(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg));
    }

    /** Common practice: clear sky, Sun 35° up, star 69° from it. */
    @ParameterizedTest
    @CsvSource({"70, 1.0", "100, 2.0", "200, 3.25"})
    void telescopeByDay_showsWhatObserversReport(double apertureMm, double faintest) {
        AirlessDirection sun = at(180, 35);
        AirlessDirection star = at(82, 50);

        assertThat(FaintestStar.through(Instrument.forFinding(apertureMm), star, sun))
                .isCloseTo(faintest, within(HALF_A_MAGNITUDE));
    }

    /**
     * Common practice: Venus, about −4.2 and never more than 47° from the Sun, is seen at noon by practised observers
     * who know where to look; nothing else is.
     */
    @Test
    void nakedEyeByDay_seesVenusAtAKnownPosition() {
        AirlessDirection sun = at(180, 35);
        double practised = EyeThreshold.magnitude(SkyLuminance.toward(at(230, 50), sun)) - 0.26;
        assertThat(practised).isCloseTo(-4.2, within(HALF_A_MAGNITUDE));
        assertThat(FaintestStar.byEye(at(82, 50), sun)).as("no star at all").isLessThan(-1.46);
    }

    /** Common practice: Sirius, −1.46, becomes visible around sunset. */
    @Test
    void siriusBecomesVisibleAroundSunset() {
        assertThat(FaintestStar.byEye(at(180, 30), at(270, -0.8))).isCloseTo(-1.46, within(HALF_A_MAGNITUDE));
    }

    /**
     * Common practice, and the very definition: stars of the first magnitude are visible at the end of civil twilight.
     */
    @Test
    void firstMagnitudeStarsAreVisibleAtTheEndOfCivilTwilight() {
        assertThat(FaintestStar.byEye(at(90, 50), at(270, -6))).isBetween(1.0, 3.0);
    }

    @Test
    void darkNight_showsFifthMagnitudeStarsWithoutDifficulty() {
        assertThat(FaintestStar.byEye(at(90, 60), at(0, -40))).isCloseTo(5.3, within(HALF_A_MAGNITUDE));
    }

    @Test
    void limitingMagnitudeDeepensAsTheSunSinks() {
        double before = -9;
        for (double sun = 30; sun >= -20; sun -= 0.5) {
            double faintest = FaintestStar.byEye(at(90, 60), at(270, sun));
            assertThat(faintest).as("Sun at " + sun).isGreaterThanOrEqualTo(before - 0.02);
            before = faintest;
        }
    }

    /**
     * Published: clear zenith 2 cd/m² at −5°, of the order of 10³ to 10⁴ by day (ISO 15469 is relative, Krochmann
     * 1970).
     */
    @Test
    void luminanceIsOfThePublishedOrder() {
        assertThat(SkyLuminance.zenith(Angle.ofDegrees(-5))).isCloseTo(1.98, within(0.05));
        assertThat(SkyLuminance.zenith(Angle.ofDegrees(30))).isCloseTo(1990, within(1.0));
        assertThat(SkyLuminance.zenith(Angle.ofDegrees(60))).isBetween(3000.0, 8000.0);
    }

    /** ISO 15469:2004 type 12: at the zenith the ratio is 1 wherever the Sun is; darkest about 90° from the Sun. */
    @Test
    void clearSkyIsDarkestFarFromTheSun() {
        AirlessDirection sun = at(180, 40);
        assertThat(SkyLuminance.toward(at(0, 90), sun)).isCloseTo(SkyLuminance.zenith(sun.altitude()), within(1e-6));
        assertThat(SkyLuminance.toward(at(0, 50), sun)).isLessThan(SkyLuminance.toward(at(180, 70), sun) / 2);
    }

    @Test
    void apertureInInches_isRefused_askingForMillimetres() {
        assertThatThrownBy(() -> Instrument.forFinding(8))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("an aperture of 8 mm is outside 10 to 2000");
    }
}
