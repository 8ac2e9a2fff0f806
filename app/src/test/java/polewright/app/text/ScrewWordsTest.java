package polewright.app.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import polewright.axis.AxisOffset;
import polewright.axis.rig.Experience;
import polewright.sky.angle.Angle;

class ScrewWordsTest {
    private static Experience experience(
            int nights, double azimuth, double altitude, int clampings, AxisOffset shift, double sigmaArcmin) {
        return new Experience(nights, azimuth, 0.04, altitude, 0.04, clampings, shift, Angle.ofArcminutes(sigmaArcmin));
    }

    @Test
    void whatMatters_isSaid() {
        assertThat(ScrewWords.learned(experience(4, 1.12, 1.01, 3, AxisOffset.ofArcminutes(0.2, -2), 0.6)))
                .contains("From 4 earlier nights: the azimuth screw moves 12 % more than the rig file says; clamping"
                        + " usually lowers this axis 2.0′.");
        assertThat(ScrewWords.learned(experience(1, 1.02, 0.8, 1, AxisOffset.ofArcminutes(0.2, -1), 1.4)))
                .contains("From an earlier night: the altitude screw moves 20 % less than the rig file says.");
        assertThat(ScrewWords.learned(experience(2, 1, 1, 5, AxisOffset.ofArcminutes(3, 2), 0.5)))
                .contains("From 2 earlier nights: clamping usually raises this axis 2.0′ and takes it 3.0′ east.");
    }

    @Test
    void whatIsWithinItsUncertainty_isNotSaid() {
        assertThat(ScrewWords.learned(experience(4, 1.03, 0.97, 3, AxisOffset.ofArcminutes(0.2, -0.5), 0.6)))
                .isEmpty();
        assertThat(ScrewWords.learned(experience(4, 1.02, 0.98, 0, AxisOffset.ofArcminutes(3, -5), 0.6)))
                .isEmpty();
    }
}
