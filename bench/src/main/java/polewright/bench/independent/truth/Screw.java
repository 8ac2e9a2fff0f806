package polewright.bench.independent.truth;

import java.util.random.RandomGenerator;

/**
 * A screw that pushes an arm about a pivot, as it truly is.
 *
 * @param perTurn tangent of the angle that one turn makes from the middle of the travel; below zero when a clockwise turn lowers
 *     the axis or takes it left
 * @param play turns that are lost when the sense is reversed
 * @param slack of the play, what a clockwise turn has taken up, 0 to {@code play}
 * @param driven turns that took effect so far, clockwise positive
 */
public record Screw(double perTurn, double play, double slack, double driven) {
    /** How exactly a hand makes one leg of a turn, 1 sigma, turns (common practice). */
    private static final double HAND_SIGMA_TURNS = 0.05;

    /** Not turned yet, its play anywhere. */
    static Screw drawn(double perTurn, double play, RandomGenerator random) {
        return new Screw(perTurn, play, play * random.nextDouble(), 0);
    }

    /** +1 when a clockwise turn takes the axis up or to the right, −1 otherwise. */
    public int sense() {
        return perTurn < 0 ? -1 : 1;
    }

    /** The angle that the arm stands at, from where it stood at first. */
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

    /** Turned past the goal and back: all of it together, and the last leg of it, 0 when there is none. */
    Screw turned(double net, double back, RandomGenerator random) {
        return turned(net - back, random).turned(back, random);
    }
}
