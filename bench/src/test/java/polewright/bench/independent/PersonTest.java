package polewright.bench.independent;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.bench.independent.truth.Wedge;

/** Nights from bare ground to stop. */
class PersonTest {
    @ParameterizedTest
    @ValueSource(longs = {71, 72})
    void aRigToldRightly_isBroughtWithinTheAllowance(long seed) {
        Scene scene = Scene.drawn(seed, 30, 1);
        TrueWedge screws = TrueWedge.sensesEven(scene.random());
        Wedge wedge = screws.at(scene);
        PlayedNight night = Person.play(scene, wedge, Told.truly(scene, screws.toldRightly()), Habits.USUAL, 24);
        assertThat(night.isStopped()).isTrue();
        assertThat(night.isFalseStop()).isFalse();
        assertThat(night.refusals()).isEmpty();
        assertThat(night.moments())
                .allSatisfy(moment ->
                        assertThat(moment.right()).hasSize((int) moment.event().seq()));
    }

    @ParameterizedTest
    @ValueSource(longs = {71, 72})
    void aHandbook_getsThereToo(long seed) {
        Scene scene = Scene.drawn(seed, 30, 1);
        Wedge wedge = TrueWedge.sensesEven(scene.random()).at(scene);
        HandbookPerson.Ended ended = HandbookPerson.play(scene, wedge, 24);
        assertThat(ended.stopped()).isTrue();
        assertThat(ended.good()).isTrue();
    }
}
