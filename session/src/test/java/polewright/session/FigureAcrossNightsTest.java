package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.fix.NightAsEntered;

class FigureAcrossNightsTest {
    private static final double PRIOR_SIGMA = 0.15;
    private static final double SCATTER_SCALE = 0.02;

    private static FigureAcrossNights of(NightAsEntered... nights) {
        return FigureAcrossNights.of(List.of(nights), 1, PRIOR_SIGMA, SCATTER_SCALE);
    }

    @Test
    void oneNight_isUsed_withItsOwnUncertaintyAndTheUnseenScatter() {
        FigureAcrossNights next = of(new NightAsEntered(1.2, 0.0001));
        assertThat(next.mean()).isCloseTo(1.2, within(0.03));
        assertThat(next.sigma()).isBetween(0.04, 0.09);
    }

    @Test
    void agreeingNights_reduceTheUncertainty_disagreeingOnesIncreaseIt() {
        double one = of(new NightAsEntered(1.12, 0.0004)).sigma();
        FigureAcrossNights alike =
                of(Collections.nCopies(6, new NightAsEntered(1.12, 0.0004)).toArray(NightAsEntered[]::new));
        FigureAcrossNights apart = of(
                new NightAsEntered(1.02, 0.0004),
                new NightAsEntered(1.22, 0.0004),
                new NightAsEntered(1.02, 0.0004),
                new NightAsEntered(1.22, 0.0004),
                new NightAsEntered(1.02, 0.0004),
                new NightAsEntered(1.22, 0.0004));
        assertThat(alike.sigma()).isLessThan(0.6 * one);
        assertThat(alike.mean()).isCloseTo(1.12, within(0.005));
        assertThat(apart.sigma()).isGreaterThan(0.09);
        // Six nights with a scatter of 0.1, against a prior of 0.15: pulled toward 1 by a twelfth.
        assertThat(apart.mean()).isCloseTo(1.11, within(0.005));
    }

    @Test
    void uncertainNight_hasLittleWeight() {
        FigureAcrossNights next =
                of(new NightAsEntered(1.1, 0.0004), new NightAsEntered(1.1, 0.0004), new NightAsEntered(0.5, 1));
        assertThat(next.mean()).isCloseTo(1.1, within(0.01));
    }

    @Test
    void withoutNights_priorIsUnchanged() {
        FigureAcrossNights next = FigureAcrossNights.of(List.of(), 0, 1, 0.3);
        assertThat(next.mean()).isCloseTo(0, within(1e-12));
        assertThat(next.sigma()).isCloseTo(Math.hypot(1, 2.4 * 0.3), within(0.01));
    }

    /** Mounts drawn from the priors: the next night deviates by as much as predicted, after one night or many. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4, 10})
    void nextNight_deviatesAsPredicted(int nights) {
        Random random = new Random(20 + nights);
        int mounts = 1500;
        double squares = 0;
        for (int i = 0; i < mounts; i++) {
            double mean = 1 + PRIOR_SIGMA * random.nextGaussian();
            double scatter = scatter(random);
            List<NightAsEntered> results = new ArrayList<>();
            for (int n = 0; n < nights; n++) {
                double variance = Math.pow(0.01 + 0.04 * random.nextDouble(), 2);
                results.add(new NightAsEntered(
                        mean + Math.sqrt(scatter * scatter + variance) * random.nextGaussian(), variance));
            }
            FigureAcrossNights next = FigureAcrossNights.of(results, 1, PRIOR_SIGMA, SCATTER_SCALE);
            double error = mean + scatter * random.nextGaussian() - next.mean();
            squares += Math.pow(error / next.sigma(), 2);
        }
        // Heavy tails: the mean of 1500 squares is known to about 6 %.
        assertThat(squares / mounts).isCloseTo(1, within(0.18));
    }

    /** Half-Cauchy, cut off at ten scales. */
    private static double scatter(Random random) {
        return SCATTER_SCALE * Math.tan(random.nextDouble() * Math.atan(10));
    }
}
