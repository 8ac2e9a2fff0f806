package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class OddsTest {
    @Test
    void noDetections_areNeutral() {
        assertThat(new Odds().log()).isLessThanOrEqualTo(0);
    }

    @Test
    void detectionsWithoutStars_lowerTheOdds() {
        Odds odds = new Odds();
        for (int i = 0; i < 10; i++) {
            odds.add(0);
        }
        assertThat(odds.log()).isNegative();
    }

    @Test
    void starInPlace_raisesTheOddsByItsRarity() {
        Odds one = new Odds();
        one.add(1e4);
        Odds two = new Odds();
        two.add(1e4);
        two.add(1e4);
        // By hand: the smallest fraction of spurious detections is 0.05, so a star counts 0.95 of its gain.
        assertThat(two.log() - one.log()).isCloseTo(Math.log(0.05 + 0.95e4), within(1e-9));
    }

    @Test
    void spuriousDetectionAmongManyStars_costsLittle() {
        Odds odds = new Odds();
        for (int i = 0; i < 10; i++) {
            odds.add(1e3);
            odds.add(0);
        }
        // By hand: half are spurious, ten times ln(0.5 + 500) + ln 0.5, and the penalty for five fractions tried.
        assertThat(odds.log()).isCloseTo(10 * (Math.log(500.5) + Math.log(0.5)) - Math.log(5), within(1e-6));
    }

    @Test
    void gain_isTheGaussianDensityRelativeToChance() {
        // By hand: a million pixels, 100 stars, one sigma off at sigma 2.
        assertThat(Odds.gain(1e6, 100, 4, 2)).isCloseTo(1e4 * Math.exp(-0.5) / (8 * Math.PI), within(1e-9));
    }
}
