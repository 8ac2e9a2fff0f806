package polewright.app.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.axis.advice.Advice;
import polewright.axis.advice.ScrewTurn;
import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;
import polewright.axis.rig.ScrewSense;
import polewright.night.NightState;
import polewright.night.SuggestedStar;

/** The next thing to do, in words: the verb first, then why. */
public final class AdviceWords {
    private AdviceWords() {}

    /**
     * Several lines.
     *
     * @param star one that suits the sighting, if the advice is to take one
     */
    public static List<String> of(NightState night, Optional<SuggestedStar> star) {
        Advice advice = night.advice();
        if (advice instanceof Advice.TurnScrews turn) {
            return turn(turn, night.begun().rig());
        } else if (advice instanceof Advice.MoveByHand move) {
            return move(move);
        } else if (advice instanceof Advice.TakeSighting take) {
            return sight(take, night, star);
        } else if (advice instanceof Advice.Clamp clamp) {
            return List.of(
                    "CLAMP Tighten the clamps gently, a little on each in turn.",
                    "WHY   Good enough with a chance of " + percent(clamp.probabilityNow())
                            + ", as long as clamping moves nothing.",
                    "THEN  " + Wrapping.unbroken("polewright clamp"));
        } else if (advice instanceof Advice.Stop stop) {
            return List.of(
                    "STOP  Good enough. Leave the screws alone.",
                    "WHY   " + capitalised(night.allowance().words()) + " with a chance of "
                            + percent(stop.probabilityNow()) + ": the axis points "
                            + FixWords.direction(stop.offset()) + ".");
        }
        throw new IllegalStateException("no words for " + advice);
    }

    /** The advice in one line, for lists. */
    public static String line(NightState night) {
        return of(night, Optional.empty()).get(0).replaceAll("\\s+", " ");
    }

    /** A chance in whole percent; the ends are told as under 1 and over 99. */
    public static String percent(double probability) {
        if (probability > 0.99) {
            return Wrapping.unbroken("over 99 %");
        }
        if (probability < 0.01) {
            return Wrapping.unbroken("under 1 %");
        }
        return Wrapping.unbroken(String.format(Locale.ROOT, "%.0f %%", 100 * probability));
    }

    private static List<String> turn(Advice.TurnScrews advice, Rig rig) {
        List<String> lines = new ArrayList<>();
        if (advice.loosenFirst()) {
            lines.add("LOOSEN the clamps first.");
        }
        for (ScrewTurn turn : advice.turns()) {
            boolean azimuth = turn.screw() == ScrewTurn.Which.AZIMUTH;
            Screw screw = azimuth ? rig.azimuthScrew() : rig.altitudeScrew();
            lines.add("TURN  " + (azimuth ? "azimuth" : "altitude") + " screw " + Fractions.turns(turn.clockwiseTurns())
                    + (turn.clockwiseTurns() > 0 ? " clockwise" : " counter-clockwise") + " ("
                    + effect(screw, turn.clockwiseTurns()) + ").");
        }
        lines.add("WHY   Good enough now with a chance of " + percent(advice.probabilityNow()) + ", after this "
                + percent(advice.probabilityAfter()) + ".");
        lines.add("THEN  " + Wrapping.unbroken("polewright turn" + turnOptions(advice)));
        return lines;
    }

    private static List<String> move(Advice.MoveByHand move) {
        List<String> lines = new ArrayList<>();
        lines.add("MOVE  the whole mount by hand: it is too far off for the screws. Two people for a heavy one.");
        lines.add("      Swing it " + AngleWords.size(move.azimuth())
                + (move.azimuth().radians() >= 0 ? " to the right" : " to the left") + ", facing the pole, and "
                + (move.altitude().radians() >= 0 ? "raise" : "lower") + " the axis " + AngleWords.size(move.altitude())
                + " by the wedge's scale.");
        lines.add("THEN  " + Wrapping.unbroken("polewright knock") + ", and read compass and scale again.");
        return lines;
    }

    private static String turnOptions(Advice.TurnScrews advice) {
        StringBuilder options = new StringBuilder();
        for (ScrewTurn turn : advice.turns()) {
            options.append(turn.screw() == ScrewTurn.Which.AZIMUTH ? " --azimuth \"" : " --altitude \"")
                    .append(Fractions.of(turn.clockwiseTurns()))
                    .append(turn.clockwiseTurns() > 0 ? "" : " ccw")
                    .append('"');
        }
        return options.toString();
    }

    private static String effect(Screw screw, double clockwiseTurns) {
        ScrewSense sense = screw.clockwise();
        boolean forward = clockwiseTurns * sense.sign() > 0;
        if (sense.isAzimuth()) {
            return forward ? "swings the axis right, facing the pole" : "swings the axis left, facing the pole";
        }
        return forward ? "raises the axis" : "lowers the axis";
    }

    private static List<String> sight(Advice.TakeSighting take, NightState night, Optional<SuggestedStar> suggested) {
        List<String> lines = new ArrayList<>();
        String howLong = take.watch().isZero() ? "" : " in " + take.watch().toMinutes() + " minutes";
        lines.add("SIGHT " + capitalised(take.kind().words()) + howLong + ".");
        suggested.ifPresent(star -> lines.add("      For example " + StarWords.place(star) + "."));
        lines.add("WHY   " + capitalised(take.reason()) + ".");
        lines.addAll(SightingCommandWords.of(take, night, suggested));
        return lines;
    }

    private static String capitalised(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
