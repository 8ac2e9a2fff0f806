package polewright.simulation;

import java.util.OptionalDouble;

/**
 * The backlash of one screw: after a change of sense it turns freely before it pushes again.
 *
 * @param turns the whole backlash
 * @param toClockwise how far it may still turn clockwise before it pushes that way, 0 to {@code turns}; empty for a
 *     screw that has not been turned yet, which pushes at once either way
 */
public record DeadZone(double turns, OptionalDouble toClockwise) {
    /** A screw that has not been turned yet. */
    static DeadZone untouched(double turns) {
        return new DeadZone(turns, OptionalDouble.empty());
    }

    /** The effective part of turns made, clockwise positive. */
    double effectOf(double made) {
        return made - freeTurns(made);
    }

    /** The backlash state after those turns. */
    DeadZone after(double made) {
        return new DeadZone(turns, OptionalDouble.of(before(made) - freeTurns(made)));
    }

    private double freeTurns(double made) {
        double free = before(made);
        return made > 0 ? Math.min(made, free) : Math.max(made, free - turns);
    }

    private double before(double made) {
        return toClockwise.orElse(made > 0 ? 0 : turns);
    }
}
