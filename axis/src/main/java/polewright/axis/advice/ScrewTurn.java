package polewright.axis.advice;

/**
 * One screw to turn.
 *
 * @param screw which one
 * @param clockwiseTurns how far, clockwise positive, in eighths of a turn or, below one turn, sixteenths
 */
public record ScrewTurn(Which screw, double clockwiseTurns) {
    /** The two screws of a wedge or mount head. */
    public enum Which {
        AZIMUTH,
        ALTITUDE
    }
}
