package polewright.drawing;

import java.util.List;
import polewright.mount.rig.ScrewSense;

/**
 * One screw to turn, as a picture needs it.
 *
 * @param clockwise where a clockwise turn takes the axis; tells which screw it is
 * @param clockwiseTurns how far in all, clockwise positive; never 0
 * @param backTurns the last of it, turned back against the play, clockwise positive; 0 when there is none: the hand first
 *     turns {@code clockwiseTurns − backTurns}
 * @param isTest whether it is not known yet which way the screw goes: then {@code clockwise} is only assumed
 * @param words what the hand is told, one leg a line, as the advice says it: {@code 1 3/4 turns clockwise}
 */
public record ScrewToTurn(
        ScrewSense clockwise, double clockwiseTurns, double backTurns, boolean isTest, List<String> words) {
    public ScrewToTurn {
        words = List.copyOf(words);
    }

    boolean isAzimuth() {
        return clockwise.isAzimuth();
    }

    /** Whether the axis goes right, for who faces the pole, or up. */
    boolean movesForward() {
        return clockwiseTurns * clockwise.sign() > 0;
    }

    /** The turns of each leg, clockwise positive. */
    List<Double> legs() {
        return backTurns == 0 ? List.of(clockwiseTurns) : List.of(clockwiseTurns - backTurns, backTurns);
    }
}
