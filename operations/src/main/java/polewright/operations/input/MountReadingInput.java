package polewright.operations.input;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * A mount's display reading, as typed: {@code RA,DEC} or {@code HA,DEC}. Plain numbers are degrees; with colons or
 * letters the first is hours, the second degrees: {@code 79.41,46.21}, {@code 05:17:38,+46:12:36}, {@code
 * 5h17m38s,+46d12m36s}.
 */
public final class MountReadingInput implements ITypeConverter<MountReadingInput.Typed> {
    private static final Pattern SEXAGESIMAL = Pattern.compile(
            "([+-]?)\\s*(\\d{1,3})\\s*[:hd°]\\s*(\\d{1,2})\\s*(?:[:m'′]\\s*(?:(\\d{1,2}(?:\\.\\d*)?)\\s*[s\"″]?)?)?");
    private static final Pattern DECIMAL = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)[d°]?");

    /**
     * The two values.
     *
     * @param first right ascension or hour angle
     * @param declination as shown
     */
    public record Typed(Angle first, Angle declination) {}

    @Override
    public Typed convert(String typed) {
        List<String> parts = List.of(typed.strip().split("\\s*[,;]\\s*", -1));
        if (parts.size() != 2) {
            throw notAReading(typed);
        }
        return of(parts.get(0), parts.get(1));
    }

    /** The same from two texts. */
    public static Typed of(String first, String second) {
        Angle declination = angle(second, false);
        if (Math.abs(declination.degrees()) > 90) {
            throw new InputRefused(
                    "a declination of " + PlainNumber.asTyped(declination.degrees()) + " degrees is beyond 90",
                    "give the right ascension first, then the declination; --through-pole if the fork went through it");
        }
        return new Typed(angle(first, true), declination);
    }

    private static Angle angle(String typed, boolean inHours) {
        String text = typed.strip().toLowerCase(Locale.ROOT).replace('−', '-');
        if (DECIMAL.matcher(text).matches()) {
            double degrees = NumberInput.of(text.replaceAll("[d°]", ""));
            if (Math.abs(degrees) > 360) {
                throw notAReading(typed);
            }
            return Angle.ofDegrees(degrees);
        }
        Matcher parts = SEXAGESIMAL.matcher(text);
        if (!parts.matches()) {
            throw notAReading(typed);
        }
        int minutes = Integer.parseInt(parts.group(3));
        double seconds = parts.group(4) == null ? 0 : NumberInput.of(parts.group(4));
        double whole = Integer.parseInt(parts.group(2)) + minutes / 60.0 + seconds / 3600;
        if (minutes >= 60 || seconds >= 60 || whole > (inHours ? 24 : 180)) {
            throw notAReading(typed);
        }
        double signed = parts.group(1).equals("-") ? -whole : whole;
        return inHours ? Angle.ofHours(signed) : Angle.ofDegrees(signed);
    }

    private static InputRefused notAReading(String typed) {
        return new InputRefused(
                "'" + typed.strip() + "' is not a mount reading",
                "write both figures, such as 5h17m38s,+46d12m36s, or 79.41,46.21 in degrees");
    }
}
