package polewright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.angle.Angle;

class ScaleBarTest {
    @ParameterizedTest
    @CsvSource({
        "0.03, 0.02″",
        "0.7, 0.5″",
        "1, 1″",
        "4.9, 2″",
        "59, 30″",
        "60, 1′",
        "119, 1′",
        "120, 2′",
        "1799, 20′",
        "1800, 30′",
        "3599, 30′",
        "3600, 1°",
        "36000, 10°",
        "200000, 30°"
    })
    void roundLengthFits(double limitArcsec, String words) {
        assertThat(ScaleBar.within(Angle.ofArcseconds(limitArcsec)).words()).isEqualTo(words);
    }

    @Test
    void bar_isNeverLonger_andAtLeastTwoFifths() {
        for (double arcsec = 0.01; arcsec < 100_000; arcsec *= 1.07) {
            double length = ScaleBar.within(Angle.ofArcseconds(arcsec)).length().arcseconds();
            assertThat(length / arcsec).isBetween(0.39, 1 + 1e-9);
        }
        assertThat(ScaleBar.within(Angle.ofArcminutes(5)).length().arcminutes()).isEqualTo(5, within(1e-9));
    }
}
