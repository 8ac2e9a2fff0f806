package polewright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;

class ScrewWordsTest {
    private static final Rig ASSUMED = Rig.typicalForkOnWedge();

    private static Rig rig(
            int nights, double azimuth, double altitude, int clampings, AxisOffset shift, double sigmaArcmin) {
        return ASSUMED.withExperience(Optional.of(new Experience(
                nights, azimuth, 0.04, altitude, 0.04, clampings, shift, Angle.ofArcminutes(sigmaArcmin))));
    }

    @Test
    void directionsLearnedOnEarlierNights_areReported_ifAssumed() {
        Rig left = ASSUMED.withScrews(ASSUMED.azimuthScrew().reversed(), ASSUMED.altitudeScrew(), ASSUMED.levelSigma());
        Experience learned = new Experience(2, 1, 0.04, 1, 0.04, 0, AxisOffset.NONE, Angle.ofArcminutes(1), 0.995, 0.7);
        assertThat(ScrewWords.learned(left.withExperience(Optional.of(learned))))
                .contains("From 2 earlier nights: turning the azimuth screw clockwise moves the axis left.");
        Rig described = left.withScrews(
                left.azimuthScrew().withSenseConfirmed(), left.altitudeScrew().withSenseConfirmed(), left.levelSigma());
        assertThat(ScrewWords.learned(described.withExperience(Optional.of(learned))))
                .isEmpty();
    }

    @Test
    void assumedDirections_areReportedPerScrew() {
        assertThat(ScrewWords.assumed(ASSUMED))
                .contains("Both screw directions are assumed until the first turn of each has been checked.");
        Rig half = ASSUMED.withScrews(
                ASSUMED.azimuthScrew().withSenseConfirmed(), ASSUMED.altitudeScrew(), ASSUMED.levelSigma());
        assertThat(ScrewWords.assumed(half))
                .contains("The direction of the altitude screw is assumed until its first turn has been checked.");
        assertThat(ScrewWords.assumed(half.withScrews(
                        half.azimuthScrew(), half.altitudeScrew().withSenseConfirmed(), half.levelSigma())))
                .isEmpty();
    }

    @Test
    void significantEffect_isReported() {
        assertThat(ScrewWords.learned(rig(4, 1.12, 1.01, 3, AxisOffset.ofArcminutes(0.2, -2), 0.6)))
                .contains("From 4 earlier nights: the azimuth screw moves 12 % more than the rig file says; clamping"
                        + " usually lowers this axis 2.0′.");
        assertThat(ScrewWords.learned(rig(1, 1.02, 0.8, 1, AxisOffset.ofArcminutes(0.2, -1), 1.4)))
                .contains("From an earlier night: the altitude screw moves 20 % less than the rig file says.");
        assertThat(ScrewWords.learned(rig(2, 1, 1, 5, AxisOffset.ofArcminutes(3, 2), 0.5)))
                .contains("From 2 earlier nights: clamping usually raises this axis 2.0′ and moves it 3.0′ east.");
    }

    @Test
    void effectWithinItsUncertainty_isNotReported() {
        assertThat(ScrewWords.learned(rig(4, 1.03, 0.97, 3, AxisOffset.ofArcminutes(0.2, -0.5), 0.6)))
                .isEmpty();
        assertThat(ScrewWords.learned(rig(4, 1.02, 0.98, 0, AxisOffset.ofArcminutes(3, -5), 0.6)))
                .isEmpty();
    }
}
