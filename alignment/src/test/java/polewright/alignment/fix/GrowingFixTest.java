package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import polewright.mount.AxisOffset;

/** A fix updated step by step, compared with the whole night solved together. */
@Tag("slow")
class GrowingFixTest {
    private static final double REST_RAD = 1e-9;

    /** Results kept between calls only save work, even after a step has been removed or changed. */
    @Test
    void outcome_dependsOnTheStepsAlone() {
        for (long seed = 1; seed <= 2; seed++) {
            QuarrelsomeNight night = QuarrelsomeNight.ofIntervals(20, 0.1, seed);
            List<Step> steps = night.steps();
            assertThat(steps).hasSizeGreaterThan(49);
            GrowingFix growing = night.growing();
            Random random = new Random(seed);
            for (int count = 1; count <= steps.size(); count++) {
                List<Step> some = steps.subList(0, count);
                if (random.nextInt(4) == 0) {
                    growing = growing.with(steps.subList(0, random.nextInt(count + 1)));
                }
                if (random.nextInt(8) == 0) {
                    List<Step> changed = new ArrayList<>(some);
                    changed.remove(random.nextInt(count));
                    growing = growing.with(changed);
                }
                growing = growing.with(some);
                if (count % 15 == 0 || count == steps.size()) {
                    assertSame(
                            growing.fix(),
                            night.growing().with(some).fix(),
                            "night " + seed + " after " + count + " steps");
                }
            }
        }
    }

    private static void assertSame(Fix grown, Fix fromScratch, String when) {
        assertThat(grown.getClass()).as(when).isEqualTo(fromScratch.getClass());
        AxisOffset apart = grown.state().offset().minus(fromScratch.state().offset());
        assertThat(apart.distance().radians()).as(when).isCloseTo(0, within(REST_RAD));
        assertThat(setAside(grown)).as(when).isEqualTo(setAside(fromScratch));
        assertThat(grown.agreements()).as(when).hasSameSizeAs(fromScratch.agreements());
    }

    /** Condensing older steps changes neither the axis nor its uncertainty. */
    @Test
    void longConsistentNight_equalsAllStepsSolvedTogether() {
        for (long seed = 1; seed <= 12; seed++) {
            QuarrelsomeNight night = QuarrelsomeNight.ofIntervals(24, 0, seed);
            Fix whole = night.exactly();
            Fix condensed = night.growing().with(night.steps()).fix();
            // Steps condensed while the scatter seemed larger keep their wider sigmas.
            assertThat(differenceInSigmas(condensed, whole)).as("night " + seed).isLessThan(0.1);
            assertThat(largestSigma(condensed) / largestSigma(whole))
                    .as("night " + seed)
                    .isCloseTo(1, within(0.01));
            assertThat(setAside(whole)).as("night " + seed).containsAll(setAside(condensed));
        }
    }

    /**
     * Also with mistakes that can be identified. The result may differ if one wrong turn makes many sightings doubtful.
     */
    @Test
    void longNightWithMistakes_nearlyEqualsAllStepsSolvedTogether() {
        int singledOut = 0;
        for (long seed = 1; seed <= 30; seed++) {
            QuarrelsomeNight night = QuarrelsomeNight.ofIntervals(24, 0.1, seed);
            Fix whole = night.exactly();
            if (setAside(whole).isEmpty() || setAside(whole).size() > 4 || whole instanceof Fix.Dubious) {
                continue;
            }
            singledOut++;
            Fix condensed = night.growing().with(night.steps()).fix();
            assertThat(differenceInSigmas(condensed, whole)).as("night " + seed).isLessThan(0.6);
            assertThat(largestSigma(condensed) / largestSigma(whole))
                    .as("night " + seed)
                    .isCloseTo(1, within(0.1));
        }
        assertThat(singledOut).isGreaterThan(8);
    }

    private static double differenceInSigmas(Fix fix, Fix whole) {
        AxisOffset difference = fix.state().offset().minus(whole.state().offset());
        return Math.sqrt(whole.state().offsetCovariance().normalisedSquare(difference));
    }

    private static double largestSigma(Fix fix) {
        return fix.state().offsetCovariance().largestSigma().radians();
    }

    private static Set<Long> setAside(Fix fix) {
        return fix.agreements().stream()
                .filter(Agreement::contradictory)
                .map(Agreement::seq)
                .collect(Collectors.toSet());
    }
}
