package polewright.alignment.camera;

import java.util.List;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * Searches the eastward drift for one turn of the worm: a sine in addition to the steady rate, of any period from 100 s
 * to 1200 s that the sequence covers once and samples closely enough.
 */
final class PeriodicErrorSearch {
    // Worms turn once in a few minutes (common practice: 2 to 20).
    private static final double SHORTEST_MINUTES = 100 / 60.0;
    private static final double LONGEST_MINUTES = 1200 / 60.0;
    private static final double FRAMES_IN_A_PERIOD = 3;
    private static final int FEWEST_FRAMES = 12;
    // False-alarm probability of the whole search, not of one trial period.
    private static final double BY_CHANCE = 1e-3;
    private static final double STEPS_IN_A_RESOLUTION = 10;
    private static final int REFINEMENTS = 30;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private PeriodicErrorSearch() {}

    /** The steady drift, with a sine if it is significant against both noise and a parabola. */
    static DriftLine drift(List<DriftLine.Point> eastward) {
        DriftLine straight = DriftLine.of(eastward);
        int n = eastward.size();
        double span = eastward.get(n - 1).minutes();
        double highest = 1 / Math.max(SHORTEST_MINUTES, FRAMES_IN_A_PERIOD * span / (n - 1));
        double lowest = 1 / Math.min(LONGEST_MINUTES, span);
        if (n < FEWEST_FRAMES || highest <= lowest) {
            return straight;
        }
        double step = 1 / (STEPS_IN_A_RESOLUTION * span);
        double best = lowest;
        double least = Double.POSITIVE_INFINITY;
        for (double frequency = lowest; frequency <= highest; frequency += step) {
            double left = DriftLine.withSine(eastward, 1 / frequency).residualSquare();
            if (left < least) {
                least = left;
                best = frequency;
            }
        }
        double frequency = refined(eastward, Math.max(lowest, best - step), Math.min(highest, best + step));
        DriftLine waved = DriftLine.withSine(eastward, 1 / frequency);
        double independentTrials = 1 + span * (highest - lowest);
        double simpler = DriftLine.withBend(eastward).residualSquare();
        return byChance(simpler, waved.residualSquare(), n) * independentTrials < BY_CHANCE ? waved : straight;
    }

    /** Probability of so much better a fit by amplitude, phase and period from noise alone (F test). */
    private static double byChance(double without, double with, int n) {
        int degreesOfFreedom = n - 5;
        if (with <= 0) {
            return without > 0 ? 0 : 1;
        }
        double f = (without - with) / 3 / (with / degreesOfFreedom);
        return f <= 0 ? 1 : 1 - new FDistribution(3, degreesOfFreedom).cumulativeProbability(f);
    }

    /** Golden-section search for the frequency with the smallest residuals. */
    private static double refined(List<DriftLine.Point> points, double from, double to) {
        double low = from;
        double high = to;
        for (int i = 0; i < REFINEMENTS; i++) {
            double left = high - GOLDEN * (high - low);
            double right = low + GOLDEN * (high - low);
            if (DriftLine.withSine(points, 1 / left).residualSquare()
                    < DriftLine.withSine(points, 1 / right).residualSquare()) {
                high = right;
            } else {
                low = left;
            }
        }
        return (low + high) / 2;
    }
}
