package polewright.mount.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.rig.ScrewGeometry.DegreesPerTurn;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class ScrewTest {
    private static final Angle ALTITUDE = Angle.ofDegrees(54.6);
    private static final ScrewGeometry HALF_DEGREE = new DegreesPerTurn(Angle.ofDegrees(0.5));

    @ParameterizedTest
    @CsvSource({"RIGHT, 1", "LEFT, -1", "RAISES, 1", "LOWERS, -1"})
    void clockwiseTurn_movesInTheScrewsDirection(ScrewSense sense, double sign) {
        Screw screw = Screw.rough(HALF_DEGREE, sense);

        assertThat(screw.move(3, ALTITUDE).degrees()).isEqualTo(sign * 1.5, within(1e-12));
        assertThat(screw.move(-3, ALTITUDE).degrees()).isEqualTo(-sign * 1.5, within(1e-12));
        assertThat(screw.turnsFor(Angle.ofDegrees(1.5), ALTITUDE)).isEqualTo(sign * 3, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"RIGHT, true", "LEFT, true", "RAISES, false", "LOWERS, false"})
    void sense_knowsItsScrew(ScrewSense sense, boolean azimuth) {
        assertThat(sense.isAzimuth()).isEqualTo(azimuth);
    }

    @ParameterizedTest
    @CsvSource({"RAISES", "LOWERS"})
    void turnbuckleOfEitherSense_roundTripsTurns(ScrewSense sense) {
        Screw screw = Screw.rough(new ScrewGeometry.Turnbuckle(120, 150, 90, ALTITUDE, 2), sense);

        assertThat(screw.turnsFor(screw.move(2.5, ALTITUDE), ALTITUDE)).isEqualTo(2.5, within(1e-9));
    }

    @Test
    void impossibleUncertainties_areRefused() {
        assertThatThrownBy(() -> new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0, 0.05, 0.1))
                .isInstanceOf(InputRefused.class)
                .hasMessage("uncertainty of the screw's effect of 0.0 is outside 0.001 to 2.0. Correct the rig file.");
        assertThatThrownBy(() -> new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0.1, 6, 0.1))
                .isInstanceOf(InputRefused.class)
                .hasMessage("uncertainty of a turn by hand of 6.0 is outside 0.001 to 5.0. Correct the rig file.");
        assertThatThrownBy(() -> new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0.1, 0.05, -1))
                .isInstanceOf(InputRefused.class)
                .hasMessage("backlash of -1.0 is outside 0.0 to 20.0. Correct the rig file.");
    }

    /**
     * Against a dead zone simulated leg by leg: the screw pushes one face, then, after the backlash, the other.
     * Backlash is uniformly distributed; a screw turned before rests on the face of its last direction.
     */
    @ParameterizedTest
    @CsvSource({
        "-1.5, 0.5, 1",
        "1.5, -0.5, -1",
        "-1.5, 0.5, -1",
        "1.5, -0.5, 1",
        "0, 0.6, 1",
        "0, 0.6, -1",
        "-1, 0, 1",
        "-1, 0, -1",
        "2, 0.5, 1",
        "2, 0.5, -1",
        "-1.5, 0.1, 1",
        "1.5, -0.1, -1",
        "-0.05, 0.1, 1"
    })
    void effect_agreesWithASimulatedDeadZone(double net, double back, double lastSense) {
        double maxBacklash = 0.4;
        Screw screw = new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0.1, 0.001, maxBacklash);
        int times = 4000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < times; i++) {
            double moved = deadZone(maxBacklash * (i + 0.5) / times, lastSense, net - back, back);
            sum += moved;
            squares += moved * moved;
        }
        double mean = sum / times;
        double sigma = Math.sqrt(Math.max(0, squares / times - mean * mean));

        Screw.Effect effect = screw.effect(new HandTurns(net, back), lastSense);

        // The hand adds a thousandth of a turn, or two.
        assertThat(effect.turns()).isCloseTo(mean, within(1e-6));
        assertThat(effect.sigmaTurns()).isCloseTo(sigma, within(0.0015));
    }

    private static double deadZone(double play, double lastSense, double... legs) {
        // How far the screw can turn clockwise before it pushes.
        double toClockwiseFace = lastSense > 0 ? 0 : play;
        double moved = 0;
        for (double leg : legs) {
            double free = leg > 0 ? Math.min(leg, toClockwiseFace) : Math.max(leg, toClockwiseFace - play);
            toClockwiseFace -= free;
            moved += leg - free;
        }
        return moved;
    }

    @ParameterizedTest
    @CsvSource({
        "CLOCKWISE, 1, -1.5",
        "CLOCKWISE, 1, 1.5",
        "CLOCKWISE, -1, 1.5",
        "CLOCKWISE, -1, -1.5",
        "COUNTER_CLOCKWISE, -1, 1.5",
        "COUNTER_CLOCKWISE, 1, 1.5",
        "COUNTER_CLOCKWISE, 0, 1.5",
        "EITHER, 1, -1.5",
        "EITHER, -1, -1.5",
        "EITHER, 0, 2"
    })
    void neededTurns_haveTheWantedEffect_forEachFinish(FinishSense finish, double lastSense, double wanted) {
        Screw screw = new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0.1, 0.05, 0.4, finish);

        double net = screw.neededFrom(lastSense, wanted);

        double back = finish.isSatisfiedBy(net) ? 0 : -Math.signum(net);
        Screw.Effect effect = screw.effect(new HandTurns(net, back), lastSense);
        assertThat(effect.turns()).isCloseTo(wanted, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"-1.5, 0.5, 1, 1", "1.5, -0.5, -1, -1", "-1.5, 0.5, 0, 1"})
    void pastAndBackInTheSameDirection_hasOnlyTheHandsUncertainty(
            double net, double back, double lastSense, double left) {
        Screw screw = new Screw(HALF_DEGREE, ScrewSense.RIGHT, 0.1, 0.05, 0.4);
        HandTurns made = new HandTurns(net, back);

        assertThat(made.lastSense()).isEqualTo(left);
        if (lastSense != 0) {
            assertThat(screw.effect(made, lastSense)).isEqualTo(new Screw.Effect(net, 0.05 * Math.sqrt(2)));
        }
    }
}
