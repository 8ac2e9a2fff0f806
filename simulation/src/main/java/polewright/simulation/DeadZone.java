package polewright.simulation;

import java.util.OptionalDouble;

/**
 * The play of one screw: between pushing one way and pushing the other it turns freely.
 *
 * @param turns all of the play
 * @param toClockwise how far it may still turn clockwise before it pushes that way, 0 to {@code turns}; none while it was
 *     not turned yet, when it pushes at once whichever way it goes
 */
public record DeadZone(double turns, OptionalDouble toClockwise) {
    /** A screw that was not turned yet. */
    static DeadZone untouched(double turns) {
        return new DeadZone(turns, OptionalDouble.empty());
    }

    /** What takes effect of turns made, clockwise positive. */
    double effectOf(double made) {
        return made - freeOf(made);
    }

    /** The play as those turns leave it. */
    DeadZone after(double made) {
        return new DeadZone(turns, OptionalDouble.of(before(made) - freeOf(made)));
    }

    private double freeOf(double made) {
        double free = before(made);
        return made > 0 ? Math.min(made, free) : Math.max(made, free - turns);
    }

    private double before(double made) {
        return toClockwise.orElse(made > 0 ? 0 : turns);
    }
}
