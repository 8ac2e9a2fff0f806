package polewright.bench.planning;

import java.util.Arrays;

/**
 * The best score of all orders of a few targets, each turn beginning at any whole five minutes.
 *
 * <p>For each set of targets, each last one and each time at which it may end, the best score of all orders of that
 * set is kept: what comes after depends on nothing else. This omits no order and no waiting; {@code EveryOrderTest}
 * compares it with full enumeration.
 */
public final class EveryOrder {
    private static final double NEVER = Double.NEGATIVE_INFINITY;

    private EveryOrder() {}

    /** The best score; 0 when nothing can be observed. */
    public static double best(DocumentedScore score) {
        int count = score.count();
        int sets = 1 << count;
        int times = score.steps() + 1;
        double[][] turns = new double[count][times];
        for (int target = 0; target < count; target++) {
            for (int step = 0; step < times; step++) {
                turns[target][step] = score.turn(target, step);
            }
        }
        double[][][] ended = new double[sets][count][];
        double best = 0;
        for (int set = 1; set < sets; set++) {
            for (int last = 0; last < count; last++) {
                if ((set & (1 << last)) == 0) {
                    continue;
                }
                double[] scores = new double[times];
                Arrays.fill(scores, NEVER);
                int before = set & ~(1 << last);
                for (int step = 0; step + score.turnSteps() < times; step++) {
                    if (Double.isNaN(turns[last][step])) {
                        continue;
                    }
                    double already = already(score, ended[before], before, last, step);
                    int end = step + score.turnSteps();
                    scores[end] = already + turns[last][step];
                    best = Math.max(best, scores[end]);
                }
                ended[set][last] = scores;
            }
        }
        return best;
    }

    /** The best score of all that may come before a turn, including the cost of beginning it then. */
    private static double already(DocumentedScore score, double[][] ended, int before, int last, int step) {
        if (before == 0) {
            return -score.cost(-1, 0, last, step);
        }
        double best = NEVER;
        for (int previous = 0; previous < ended.length; previous++) {
            double[] scores = ended[previous];
            if (scores == null) {
                continue;
            }
            for (int end = 0; end <= step; end++) {
                if (scores[end] > NEVER) {
                    best = Math.max(best, scores[end] - score.cost(previous, end, last, step));
                }
            }
        }
        return best;
    }
}
