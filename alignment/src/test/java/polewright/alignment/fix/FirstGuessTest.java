package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The first forward pass: reusing that of a shorter night and skipping part of the update gives a bit-identical result.
 */
class FirstGuessTest {
    @Test
    void continuedStepByStep_equalsTheWholeNight() {
        for (long seed = 1; seed <= 5; seed++) {
            QuarrelsomeNight night = QuarrelsomeNight.ofIntervals(8, 1, seed);
            List<Step> steps = night.steps();
            ForwardPass grown = guess(night, List.of());
            for (int count = 1; count <= steps.size(); count++) {
                grown = smoother(night, steps.subList(0, count)).firstGuess(grown);
                assertSame(grown, guess(night, steps.subList(0, count)));
            }
        }
    }

    @Test
    void continuedFromAnotherNight_equalsTheWholeNight() {
        QuarrelsomeNight night = QuarrelsomeNight.ofIntervals(8, 1, 6);
        List<Step> steps = night.steps();
        ForwardPass whole = guess(night, steps);
        for (int missing = 0; missing < steps.size(); missing++) {
            List<Step> others = new ArrayList<>(steps);
            others.remove(missing);
            assertSame(smoother(night, others).firstGuess(whole), guess(night, others));
        }
    }

    @Test
    void pointAfterASighting_equalsThatOfItsUpdate() {
        QuarrelsomeNight night = QuarrelsomeNight.ofIntervals(8, 1, 7);
        ForwardPass guess = guess(night, night.steps());
        for (int i = 0; i < guess.intervals().size(); i++) {
            AxisState before = guess.predicted().get(i);
            for (Step.Sighted sighted : guess.intervals().get(i).sightings().all()) {
                LinearisedSighting line = LinearisedSighting.of(sighted.model(), before);
                assertThat(line.pointAfter(before)).isEqualTo(LinearisationPoint.of(line.update(before)));
            }
        }
    }

    private static NightSmoother smoother(QuarrelsomeNight night, List<Step> steps) {
        return new NightSmoother(CondensedPast.none(night.site(), ToldRig.measured()), steps);
    }

    private static ForwardPass guess(QuarrelsomeNight night, List<Step> steps) {
        return smoother(night, steps).firstGuess();
    }

    private static void assertSame(ForwardPass one, ForwardPass other) {
        assertThat(one.cumulativeChiSquared()).isEqualTo(other.cumulativeChiSquared());
        assertThat(one.motions()).isEqualTo(other.motions());
        assertThat(one.filtered()).hasSameSizeAs(other.filtered());
        for (int i = 0; i < one.filtered().size(); i++) {
            assertThat(one.filtered().get(i).copyOfMean())
                    .isEqualTo(other.filtered().get(i).copyOfMean());
            assertThat(one.filtered().get(i).copyOfCovariance())
                    .isEqualTo(other.filtered().get(i).copyOfCovariance());
            assertThat(one.corrections().get(i))
                    .hasSameSizeAs(other.corrections().get(i));
        }
    }
}
