package polewright.report.text;

import java.util.List;
import polewright.drawing.mount.ScrewToTurn;
import polewright.mount.rig.Screw;

/** A screw's turns for its picture, one leg per line. */
public final class LegWords {
    private LegWords() {}

    /**
     * What to draw for a turn.
     *
     * @param clockwiseTurns total, clockwise positive
     * @param backTurns final part, turned back against the backlash; 0 if there is none
     * @param isTest whether the screw's direction is still unknown
     */
    public static ScrewToTurn toTurn(Screw screw, double clockwiseTurns, double backTurns, boolean isTest) {
        return new ScrewToTurn(screw.clockwise(), clockwiseTurns, backTurns, isTest, of(clockwiseTurns, backTurns));
    }

    private static List<String> of(double clockwiseTurns, double backTurns) {
        return backTurns == 0
                ? List.of(leg(clockwiseTurns))
                : List.of(leg(clockwiseTurns - backTurns) + ",", "then back " + leg(backTurns));
    }

    private static String leg(double turns) {
        return Fractions.turns(turns) + (turns > 0 ? " clockwise" : " counter-clockwise");
    }
}
