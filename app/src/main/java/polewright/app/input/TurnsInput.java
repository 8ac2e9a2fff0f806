package polewright.app.input;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;

/** Turns of a screw, clockwise positive: {@code 1.25}, {@code "1 1/4"}, {@code "3/8 ccw"}, {@code "2 cw"}. */
public final class TurnsInput implements ITypeConverter<Double> {
    private static final Pattern TURNS = Pattern.compile(
            "([+-]?)(?:(\\d+(?:\\.\\d*)?|\\.\\d+)(?:\\s+(\\d+)/(\\d+))?|(\\d+)/(\\d+))\\s*(cw|ccw|clockwise|counter-?clockwise|anti-?clockwise)?");

    @Override
    public Double convert(String typed) {
        Matcher m = TURNS.matcher(typed.strip().toLowerCase(java.util.Locale.ROOT));
        if (!m.matches()) {
            throw new InputRefused(
                    "'" + typed + "' is not a number of turns",
                    "write 1.25, \"1 1/4\" or \"3/8 ccw\"; clockwise is positive, ccw is the other way");
        }
        double turns = m.group(2) == null
                ? fraction(typed, m.group(5), m.group(6))
                : Double.parseDouble(m.group(2)) + (m.group(3) == null ? 0 : fraction(typed, m.group(3), m.group(4)));
        boolean counter = m.group(7) != null && !m.group(7).startsWith("cw") && !m.group(7).equals("clockwise");
        boolean minus = "-".equals(m.group(1));
        if (counter && minus) {
            throw new InputRefused(
                    "'" + typed + "' says twice that it is the other way", "leave out the minus sign or the ccw");
        }
        return counter || minus ? -turns : turns;
    }

    private static double fraction(String typed, String numerator, String denominator) {
        double below = Double.parseDouble(denominator);
        if (below == 0) {
            throw new InputRefused("'" + typed + "' divides by nothing", "write a fraction such as 3/8");
        }
        return Double.parseDouble(numerator) / below;
    }
}
