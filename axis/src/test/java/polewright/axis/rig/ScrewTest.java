package polewright.axis.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.axis.rig.ScrewGeometry.DegreesPerTurn;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class ScrewTest {
    private static final Angle ALTITUDE = Angle.ofDegrees(54.6);
    private static final ScrewGeometry HALF_DEGREE = new DegreesPerTurn(Angle.ofDegrees(0.5));

    @ParameterizedTest
    @CsvSource({"RIGHT, 1", "LEFT, -1", "RAISES, 1", "LOWERS, -1"})
    void clockwiseTurn_movesTheWayTheScrewSays(ScrewSense sense, double sign) {
        Screw screw = Screw.rough(HALF_DEGREE, sense);

        assertThat(screw.move(3, ALTITUDE).degrees()).isEqualTo(sign * 1.5, within(1e-12));
        assertThat(screw.move(-3, ALTITUDE).degrees()).isEqualTo(-sign * 1.5, within(1e-12));
        assertThat(screw.turnsFor(Angle.ofDegrees(1.5), ALTITUDE)).isEqualTo(sign * 3, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"RIGHT, true", "LEFT, true", "RAISES, false", "LOWERS, false"})
    void senseKnowsWhichScrewItBelongsTo(ScrewSense sense, boolean azimuth) {
        assertThat(sense.isAzimuth()).isEqualTo(azimuth);
    }

    @ParameterizedTest
    @CsvSource({"RAISES", "LOWERS"})
    void turnbuckleOfEitherSense_comesBackToTheTurnsItWasGiven(ScrewSense sense) {
        Screw screw = Screw.rough(new ScrewGeometry.Turnbuckle(120, 150, 90, ALTITUDE, 2), sense);

        assertThat(screw.turnsFor(screw.move(2.5, ALTITUDE), ALTITUDE)).isEqualTo(2.5, within(1e-9));
    }

    @Test
    void impossibleUncertainties_areRefused() {
        assertThatThrownBy(() -> new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0, 0.05, 0.1))
                .isInstanceOf(InputRefused.class)
                .hasMessage("uncertainty of the screw's effect of 0.0 is outside 0.001 to 2.0: correct the rig file.");
        assertThatThrownBy(() -> new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0.1, 6, 0.1))
                .isInstanceOf(InputRefused.class)
                .hasMessage("uncertainty of a turn by hand of 6.0 is outside 0.001 to 5.0: correct the rig file.");
        assertThatThrownBy(() -> new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0.1, 0.05, -1))
                .isInstanceOf(InputRefused.class)
                .hasMessage("backlash of -1.0 is outside 0.0 to 20.0: correct the rig file.");
    }
}
