package polewright.sky.almanac;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;

/** Krisciunas and Schaefer 1991, checked as far as common practice allows. */
class MoonlightTest {
    private static double sky(double altitude, double moonAltitude, double distance, double phase) {
        return Moonlight.of(Angle.ofDegrees(moonAltitude), Angle.ofDegrees(phase))
                .sky(Angle.ofDegrees(altitude), Angle.ofDegrees(distance));
    }

    @Test
    void withoutTheMoon_zenithIsDark_andLowAltitudesSlightlyBrighter() {
        assertThat(sky(90, -5, 90, 0)).isCloseTo(Moonlight.DARK_ZENITH, within(1e-9));
        // Twice the air mass: nearly twice the airglow, dimmed by 0.17 magnitudes; half a magnitude in all.
        assertThat(sky(30, -5, 90, 0)).isCloseTo(Moonlight.DARK_ZENITH - 0.5, within(0.15));
    }

    /**
     * Full Moon brightens a dark sky of 21.5 to between the 20.0 of A. R. Walker's table (NOAO Newsletter 10, 1987, V
     * at 14 days, far from the Moon; as in moustakas/impro, get_lunar_brightness.pro, 96fc0a592690) and the 18 that sky
     * meters show (common practice).
     */
    @Test
    void fullMoon_brightensTheSkyByTwoToThreeMagnitudes() {
        assertThat(sky(60, 45, 75, 3)).isBetween(18.0, 20.0);
    }

    /** At the quarter, a tenth as bright as at full: between the 21.4 of the same table and the 20.3 of sky meters. */
    @Test
    void quarterMoon_brightensTheSkyByAboutOneMagnitude() {
        assertThat(sky(60, 45, 75, 90)).isBetween(20.3, 21.4);
    }

    @Test
    void skyIsBrighterNearTheMoonAndNearFull() {
        assertThat(sky(60, 45, 20, 30)).isLessThan(sky(60, 45, 60, 30));
        assertThat(sky(60, 45, 5, 30)).isLessThan(sky(60, 45, 12, 30));
        assertThat(sky(60, 45, 60, 10)).isLessThan(sky(60, 45, 60, 100));
        assertThat(sky(60, 45, 60, 170)).isCloseTo(sky(60, -45, 60, 170), within(0.1));
    }
}
