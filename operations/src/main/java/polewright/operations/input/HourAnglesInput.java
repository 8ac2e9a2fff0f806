package polewright.operations.input;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** From one hour angle to a later one, in hours: {@code -2,1.5} or {@code 2E,1.5W}. */
public final class HourAnglesInput implements ITypeConverter<HourAnglesInput.HourAngles> {
    private static final Pattern ONE = Pattern.compile("([+-]?)(\\d+(?:\\.\\d*)?|\\.\\d+)\\s*h?\\s*(e|w|east|west)?");

    /** West positive; {@code to} is later than {@code from}. */
    public record HourAngles(Angle from, Angle to) {}

    @Override
    public HourAngles convert(String typed) {
        List<String> parts = List.of(typed.strip().toLowerCase(Locale.ROOT).split("\\s*,\\s*", -1));
        if (parts.size() != 2) {
            throw notHours(typed);
        }
        return new HourAngles(hours(parts.get(0), typed), hours(parts.get(1), typed));
    }

    private static Angle hours(String part, String typed) {
        Matcher one = ONE.matcher(part);
        if (!one.matches() || (!one.group(1).isEmpty() && one.group(3) != null)) {
            throw notHours(typed);
        }
        boolean east = "-".equals(one.group(1))
                || (one.group(3) != null && one.group(3).startsWith("e"));
        double hours = NumberInput.of(one.group(2));
        if (hours > 24) {
            throw notHours(typed);
        }
        return Angle.ofHours(east ? -hours : hours);
    }

    private static InputRefused notHours(String typed) {
        return new InputRefused(
                "'" + typed + "' is not a range of hour angles",
                "write hours from the meridian, the earlier first, east negative or with its letter: -2,1.5 or 2E,1.5W");
    }
}
