package polewright.operations.input;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.mount.rig.HandTurns;
import polewright.sky.InputRefused;

/**
 * Turns of a screw, clockwise positive: {@code 1.25}, {@code "1 1/4"}, {@code "3/8 ccw"}; or past the target and
 * back: {@code "2 ccw then 1/2 cw"}.
 */
public final class TurnsInput implements ITypeConverter<HandTurns> {
    private static final Pattern THEN = Pattern.compile("\\s*(?:,\\s*)?\\bthen\\b\\s*");
    private static final Pattern TURNS = Pattern.compile(
            "([+-]?)(?:(\\d+(?:\\.\\d*)?|\\.\\d+)(?:\\s+(\\d+)/(\\d+))?|(\\d+)/(\\d+))\\s*(cw|ccw|clockwise|counter-?clockwise|anti-?clockwise)?");

    @Override
    public HandTurns convert(String typed) {
        String[] legs = THEN.split(typed.strip().toLowerCase(Locale.ROOT), -1);
        if (legs.length > 2) {
            throw new InputRefused(
                    "'" + typed + "' has more than two legs",
                    "give the turns there and the turns back, such as \"2 ccw then 1/2 cw\", or log each leg");
        }
        double outward = oneWay(typed, legs[0]);
        if (legs.length == 1) {
            return HandTurns.straight(outward);
        }
        double back = oneWay(typed, legs[1]);
        if (!(outward * back < 0)) {
            throw new InputRefused(
                    "'" + typed + "' does not turn back",
                    "give opposite directions, such as \"2 ccw then 1/2 cw\", or add up turns in the same direction");
        }
        return new HandTurns(outward + back, back);
    }

    private static double oneWay(String typed, String leg) {
        Matcher m = TURNS.matcher(leg);
        if (!m.matches()) {
            throw new InputRefused(
                    "'" + typed + "' is not a number of turns",
                    "write 1.25, \"1 1/4\", \"3/8 ccw\" or \"2 ccw then 1/2 cw\"; clockwise is positive, ccw is the"
                            + " other"
                            + " way");
        }
        double turns = m.group(2) == null
                ? fraction(typed, m.group(5), m.group(6))
                : NumberInput.of(m.group(2)) + (m.group(3) == null ? 0 : fraction(typed, m.group(3), m.group(4)));
        boolean counter = m.group(7) != null
                && !m.group(7).startsWith("cw")
                && !m.group(7).equals("clockwise");
        boolean minus = "-".equals(m.group(1));
        if (counter && minus) {
            throw new InputRefused("'" + typed + "' has both a minus sign and ccw", "leave out one of them");
        }
        return counter || minus ? -turns : turns;
    }

    private static double fraction(String typed, String numerator, String denominator) {
        double below = NumberInput.of(denominator);
        if (below == 0) {
            throw new InputRefused("'" + typed + "' divides by zero", "write a fraction such as 3/8");
        }
        return NumberInput.of(numerator) / below;
    }
}
