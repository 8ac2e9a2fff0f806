package polewright.bench.independent;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.bench.independent.truth.Wedge;
import polewright.session.event.Correction;

/** Nights from bare ground to stop. */
class PersonTest {
    @ParameterizedTest
    @ValueSource(longs = {71, 72})
    void correctlyStatedRig_isBroughtWithinTheAllowance(long seed) {
        Scene scene = Scene.drawn(seed, 30, 1);
        TrueWedge screws = TrueWedge.sensesEven(scene.random());
        Wedge wedge = screws.at(scene);
        PlayedNight night = Person.play(scene, wedge, Told.truly(scene, screws.correctlyStated()), Habits.USUAL, 24);
        assertThat(night.isStopped()).isTrue();
        assertThat(night.isFalseStop()).isFalse();
        assertThat(night.refusals()).isEmpty();
        assertThat(night.moments())
                .allSatisfy(moment ->
                        assertThat(moment.right()).hasSize((int) moment.event().seq()));
    }

    @ParameterizedTest
    @ValueSource(longs = {71, 72})
    void handbookPerson_getsThereToo(long seed) {
        Scene scene = Scene.drawn(seed, 30, 1);
        Wedge wedge = TrueWedge.sensesEven(scene.random()).at(scene);
        HandbookPerson.Ended ended = HandbookPerson.play(scene, wedge, 24);
        assertThat(ended.stopped()).isTrue();
        assertThat(ended.good()).isTrue();
    }

    @Test
    void reversedDrift_isCorrectedOnceNamed() {
        MistakenNight left = MistakenNight.of(Mistake.DRIFT_SIGN, 3001, false);
        MistakenNight corrected = MistakenNight.of(Mistake.DRIFT_SIGN, 3001, true);
        assertThat(left.isMade()).isTrue();
        assertThat(left.night().mistaken()).hasSize(1);
        assertThat(left.isNamed()).isTrue();
        assertThat(corrections(left)).isZero();
        assertThat(corrections(corrected)).isOne();
        assertThat(Accusations.of(corrected.night().last().night()).isAny()).isFalse();
    }

    private static long corrections(MistakenNight night) {
        return night.night().moments().stream()
                .filter(moment -> moment.event().event() instanceof Correction.MeasurementCorrected)
                .count();
    }
}
