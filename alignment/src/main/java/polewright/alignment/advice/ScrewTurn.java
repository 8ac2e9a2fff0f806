package polewright.alignment.advice;

import polewright.mount.rig.HandTurns;

/**
 * One screw to turn. A turn that must end against the way it goes is made in two legs: past the goal, then back.
 *
 * @param screw which one
 * @param clockwiseTurns how far in all, clockwise positive, in eighths of a turn or, below one turn, sixteenths
 * @param backTurns the last leg, clockwise positive, when there is one; 0 for a turn made in one go
 */
public record ScrewTurn(Which screw, double clockwiseTurns, double backTurns) {
    /** A turn made in one go. */
    public ScrewTurn(Which screw, double clockwiseTurns) {
        this(screw, clockwiseTurns, 0);
    }

    /** Both legs, as the hand makes them. */
    public HandTurns made() {
        return new HandTurns(clockwiseTurns, backTurns);
    }

    /** The two screws of a wedge or mount head. */
    public enum Which {
        AZIMUTH,
        ALTITUDE
    }
}
