package polewright.bench.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The quick part of {@code bench/tonight-plan}. */
class TonightPlanTest {
    @Test
    void plannedOrders_scoreNearlyAsHighAsTheBest() {
        double sum = 0;
        int evenings = 5;
        for (long seed = 1; seed <= evenings; seed++) {
            double share = TonightPlan.share(seed, 6);
            assertThat(share).as("evening %d", seed).isBetween(0.8, 1.001);
            sum += share;
        }
        assertThat(sum / evenings).isGreaterThan(0.95);
    }

    /** Every order of three targets, each turn at every time, enumerated. */
    @Test
    void noOrder_isBetterThanTheBestOfEveryOrder() {
        RandomEvening random = RandomEvening.of(3, 3);
        DocumentedScore score = new DocumentedScore(random.evening(), random.observing(), random.targets());
        double best = best(score, new ArrayList<>(), -1, 0, 0);
        assertThat(best).isPositive();
        assertThat(EveryOrder.best(score)).isCloseTo(best, within(1e-9));
    }

    private static double best(DocumentedScore score, List<Integer> observed, int before, int ended, double soFar) {
        double best = soFar;
        for (int target = 0; target < score.count(); target++) {
            if (observed.contains(target)) {
                continue;
            }
            for (int step = ended; step <= score.steps(); step++) {
                double turn = score.turn(target, step);
                if (!Double.isNaN(turn)) {
                    List<Integer> longer = new ArrayList<>(observed);
                    longer.add(target);
                    double sum = soFar + turn - score.cost(before, ended, target, step);
                    best = Math.max(best, best(score, longer, target, step + score.turnSteps(), sum));
                }
            }
        }
        return best;
    }
}
