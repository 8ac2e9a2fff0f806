package polewright.sky.almanac;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;

/** Krisciunas and Schaefer 1991 as far as facts of the trade can tell ("common practice"). */
class MoonlightTest {
    private static double sky(double altitude, double moonAltitude, double distance, double phase) {
        return Moonlight.of(Angle.ofDegrees(moonAltitude), Angle.ofDegrees(phase))
                .sky(Angle.ofDegrees(altitude), Angle.ofDegrees(distance));
    }

    @Test
    void withoutTheMoonTheZenithIsDark_andLowerDownALittleBrighter() {
        assertThat(sky(90, -5, 90, 0)).isCloseTo(Moonlight.DARK_ZENITH, within(1e-9));
        // Twice the air: nearly twice the airglow, dimmed by 0.17 magnitudes: half a magnitude in all.
        assertThat(sky(30, -5, 90, 0)).isCloseTo(Moonlight.DARK_ZENITH - 0.5, within(0.15));
    }

    /**
     * Full Moon takes a dark sky of 21.5 to something between the 20.0 of A. R. Walker's table (NOAO Newsletter 10, 1987, V
     * at 14 days, far from the Moon; from memory) and the 18 that sky meters read (common practice).
     */
    @Test
    void theFullMoonBrightensTheSkyByTwoToThreeMagnitudes() {
        assertThat(sky(60, 45, 75, 3)).isBetween(18.0, 20.0);
    }

    /** At the quarter, a tenth as bright as at full: between the 21.4 of the same table and meters' 20.3. */
    @Test
    void theQuarterMoonBrightensItByAboutOne() {
        assertThat(sky(60, 45, 75, 90)).isBetween(20.3, 21.4);
    }

    @Test
    void nearerTheMoonAndNearerFullItIsBrighter() {
        assertThat(sky(60, 45, 20, 30)).isLessThan(sky(60, 45, 60, 30));
        assertThat(sky(60, 45, 5, 30)).isLessThan(sky(60, 45, 12, 30));
        assertThat(sky(60, 45, 60, 10)).isLessThan(sky(60, 45, 60, 100));
        assertThat(sky(60, 45, 60, 170)).isCloseTo(sky(60, -45, 60, 170), within(0.1));
    }
}
