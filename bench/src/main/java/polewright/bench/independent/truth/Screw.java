package polewright.bench.independent.truth;

import java.util.random.RandomGenerator;

/**
 * A screw that pushes an arm about a pivot, in its true state.
 *
 * @param perTurn tangent of the angle of one turn from the middle of the travel; negative when a clockwise turn
 *     lowers the axis or moves it left
 * @param play backlash: turns that are lost when the sense is reversed
 * @param slack the part of the backlash that a clockwise turn has taken up, 0 to {@code play}
 * @param driven effective turns so far, clockwise positive
 */
public record Screw(double perTurn, double play, double slack, double driven) {
    /** Accuracy of one leg of a turn by hand, 1 sigma, turns (common practice). */
    private static final double HAND_SIGMA_TURNS = 0.05;

    /** Not turned yet, with random slack. */
    static Screw drawn(double perTurn, double play, RandomGenerator random) {
        return new Screw(perTurn, play, play * random.nextDouble(), 0);
    }

    /** +1 when a clockwise turn moves the axis up or to the right, −1 otherwise. */
    public int sense() {
        return perTurn < 0 ? -1 : 1;
    }

    /** The angle of the arm from its initial position. */
    double angle() {
        return Math.atan(driven * perTurn);
    }

    /** Turned by hand, clockwise positive. */
    Screw turned(double turns, RandomGenerator random) {
        if (turns == 0) {
            return this;
        }
        double made = turns + HAND_SIGMA_TURNS * random.nextGaussian();
        double taken = Math.max(0, Math.min(play, slack + made));
        return new Screw(perTurn, play, taken, driven + made - (taken - slack));
    }

    /** Turned past the target and back: the net turns, and the last leg, 0 when there is none. */
    Screw turned(double net, double back, RandomGenerator random) {
        return turned(net - back, random).turned(back, random);
    }
}
