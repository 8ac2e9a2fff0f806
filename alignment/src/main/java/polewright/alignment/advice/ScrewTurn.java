package polewright.alignment.advice;

import polewright.mount.rig.HandTurns;

/**
 * A turn of one screw. A turn that has to end in the opposite direction is made in two legs: past the goal, then back.
 *
 * @param screw which screw
 * @param clockwiseTurns net turns, clockwise positive, in eighths of a turn or, below one turn, sixteenths
 * @param backTurns the last leg, clockwise positive; 0 for a turn made in one go
 */
public record ScrewTurn(Which screw, double clockwiseTurns, double backTurns) {
    /** A turn made in one go. */
    public ScrewTurn(Which screw, double clockwiseTurns) {
        this(screw, clockwiseTurns, 0);
    }

    /** Both legs together. */
    public HandTurns made() {
        return new HandTurns(clockwiseTurns, backTurns);
    }

    /** The two screws of a wedge or mount head. */
    public enum Which {
        AZIMUTH,
        ALTITUDE
    }
}
