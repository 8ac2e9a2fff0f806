package polewright.drawing.mount;

import java.util.List;
import polewright.mount.rig.ScrewSense;

/**
 * One screw to turn, with what a picture needs.
 *
 * @param clockwise direction of the axis for a clockwise turn; also identifies the screw
 * @param clockwiseTurns total turns, clockwise positive; never 0
 * @param backTurns the last leg, turned back against the backlash, clockwise positive; 0 if there is none: the first
 *     leg is {@code clockwiseTurns − backTurns}
 * @param isTest whether the screw's direction is not yet known: then {@code clockwise} is only assumed
 * @param words the instruction as worded by the advice, one leg per line: {@code 1 3/4 turns clockwise}
 */
public record ScrewToTurn(
        ScrewSense clockwise, double clockwiseTurns, double backTurns, boolean isTest, List<String> words) {
    public ScrewToTurn {
        words = List.copyOf(words);
    }

    boolean isAzimuth() {
        return clockwise.isAzimuth();
    }

    /** Whether the axis moves right, when facing the pole, or up. */
    boolean movesForward() {
        return clockwiseTurns * clockwise.sign() > 0;
    }

    /** The turns of each leg, clockwise positive. */
    List<Double> legs() {
        return backTurns == 0 ? List.of(clockwiseTurns) : List.of(clockwiseTurns - backTurns, backTurns);
    }
}
