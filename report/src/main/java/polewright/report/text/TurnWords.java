package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.advice.SkyMeanwhile;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewSense;

/** Which screws to turn, in which direction, and how the stars shift meanwhile. */
public final class TurnWords {
    private static final double[] SHARES = {
        1 / 8.0, 1 / 6.0, 1 / 5.0, 1 / 4.0, 1 / 3.0, 2 / 5.0, 1 / 2.0, 3 / 5.0, 2 / 3.0, 3 / 4.0, 1
    };
    private static final String[] SHARE_WORDS = {
        "an eighth of the field", "a sixth of the field", "a fifth of the field", "a quarter of the field",
        "a third of the field", "two fifths of the field", "half the field", "three fifths of the field",
        "two thirds of the field", "three quarters of the field", "the width of the field"
    };
    private static final double LEAST_SHARE = 0.1;
    private static final double MOST_SHARE = 1.15;

    private TurnWords() {}

    /** What to do, screw by screw; how to log it afterwards is {@link #command}. */
    static List<Line> of(Advice.TurnScrews advice, Rig rig) {
        List<Line> lines = new ArrayList<>();
        for (ScrewTurn turn : advice.turns()) {
            boolean isTest = advice.tests().contains(turn.screw());
            lines.add(Tag.TURN.line(name(turn.screw()) + " screw " + legs(turn) + ", looking at its head ("
                    + (isTest ? "a test turn" : effect(screw(rig, turn.screw()), turn)) + ")."));
            advice.sky().stream()
                    .filter(sky -> sky.screw() == turn.screw())
                    .forEach(sky -> lines.add(Tag.SKY.line(sky(sky, turn, isTest))));
        }
        return lines;
    }

    /** How to log it afterwards. */
    static List<Line> command(Advice.TurnScrews advice) {
        StringBuilder typed = new StringBuilder("polewright turn");
        for (ScrewTurn turn : advice.turns()) {
            typed.append(" --")
                    .append(name(turn.screw()))
                    .append(" \"")
                    .append(typed(turn))
                    .append('"');
        }
        if (Tag.THEN.line(typed.toString()).inTerminal().length() <= Wrapping.WIDTH) {
            return List.of(Tag.THEN.line(Wrapping.unbroken(typed.toString())));
        }
        List<Line> lines = new ArrayList<>(List.of(Tag.THEN.line("log it:")));
        lines.addAll(Tag.TYPED.lines(Wrapping.command(typed.toString())));
        return lines;
    }

    private static String legs(ScrewTurn turn) {
        return turn.made().isPastAndBack()
                ? leg(turn.made().outward()) + ", then " + leg(turn.made().back())
                : leg(turn.clockwiseTurns());
    }

    private static String leg(double turns) {
        return Fractions.turns(turns) + (turns > 0 ? " clockwise" : " counter-clockwise");
    }

    /** The turns of one screw as the turn command takes them. */
    public static String typed(ScrewTurn turn) {
        return turn.made().isPastAndBack()
                ? typed(turn.made().outward()) + " then " + typed(turn.made().back())
                : Fractions.of(turn.clockwiseTurns()) + (turn.clockwiseTurns() > 0 ? "" : " ccw");
    }

    private static String typed(double leg) {
        return Fractions.of(leg) + (leg > 0 ? " cw" : " ccw");
    }

    private static String effect(Screw screw, ScrewTurn turn) {
        String moves = effect(screw, turn.clockwiseTurns());
        return turn.made().isPastAndBack()
                ? moves + "; ending " + (turn.backTurns() > 0 ? "clockwise" : "counter-clockwise")
                        + " takes up its play"
                : moves;
    }

    private static String effect(Screw screw, double clockwiseTurns) {
        ScrewSense sense = screw.clockwise();
        boolean forward = clockwiseTurns * sense.sign() > 0;
        if (sense.isAzimuth()) {
            return forward ? "swings the axis right, facing the pole" : "swings the axis left, facing the pole";
        }
        return forward ? "raises the axis" : "lowers the axis";
    }

    private static String sky(SkyMeanwhile sky, ScrewTurn turn, boolean isTest) {
        return "In the " + sky.optic() + (sky.isPoleStar() ? " the pole star shifts " : " stars near the pole shift ")
                + (turn.made().isPastAndBack() ? "in all " : "") + fields(sky.fields()) + " toward "
                + AngleWords.clock(sky.toward().clockwiseFromTop()) + (isTest ? ", or the opposite way." : ".");
    }

    /** {@code a third of the field}, {@code 2.5 fields}. */
    static String fields(double fields) {
        if (fields < LEAST_SHARE) {
            return "less than a tenth of the field";
        }
        if (fields > MOST_SHARE) {
            return String.format(java.util.Locale.ROOT, "%.1f fields", fields);
        }
        int nearest = 0;
        for (int i = 1; i < SHARES.length; i++) {
            nearest = Math.abs(SHARES[i] - fields) < Math.abs(SHARES[nearest] - fields) ? i : nearest;
        }
        return SHARE_WORDS[nearest];
    }

    private static String name(ScrewTurn.Which which) {
        return which == ScrewTurn.Which.AZIMUTH ? "azimuth" : "altitude";
    }

    private static Screw screw(Rig rig, ScrewTurn.Which which) {
        return which == ScrewTurn.Which.AZIMUTH ? rig.azimuthScrew() : rig.altitudeScrew();
    }
}
