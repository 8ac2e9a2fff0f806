package polewright.operations.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;

/** A corner of the horizon profile, {@code AZIMUTH,ALTITUDE} in degrees; and whole profiles, one corner per line. */
public final class SkylineInput {
    private static final Pattern SEPARATOR = Pattern.compile("\\s*[,;\\t]\\s*|\\s+");

    private SkylineInput() {}

    /**
     * A horizon from a table: two columns separated by comma, semicolon, tab or blanks; a first line of words is a
     * heading, lines that begin with {@code #} are comments.
     *
     * @throws InputRefused if a line is neither; the message gives its number
     */
    public static Horizon ofCsv(String text) {
        List<Horizon.Point> corners = new ArrayList<>();
        int number = 0;
        boolean headed = false;
        for (String line : text.lines().toList()) {
            number++;
            String bare = line.replace("\uFEFF", "").strip();
            if (bare.isEmpty() || bare.startsWith("#")) {
                continue;
            }
            if (corners.isEmpty() && !headed && isHeading(bare)) {
                headed = true;
                continue;
            }
            try {
                corners.add(corner(bare));
            } catch (InputRefused e) {
                throw e.at("line " + number);
            }
        }
        if (corners.isEmpty()) {
            throw new InputRefused(
                    "it has no skyline corners", "write azimuth,altitude in degrees, one corner per line");
        }
        return new Horizon(corners);
    }

    private static boolean isHeading(String line) {
        return line.toLowerCase(Locale.ROOT).chars().filter(Character::isLetter).count() > 2;
    }

    /**
     * One corner: {@code 95,22.5}.
     *
     * @throws InputRefused if it is none
     */
    public static Horizon.Point corner(String typed) {
        List<String> parts =
                SEPARATOR.splitAsStream(typed.strip().replace("°", "")).toList();
        if (parts.size() != 2) {
            throw notACorner(typed);
        }
        if (!parts.stream().allMatch(NumberInput::isNumber)) {
            throw notACorner(typed);
        }
        double azimuth = NumberInput.of(parts.get(0));
        double altitude = NumberInput.of(parts.get(1));
        if (!(azimuth >= 0 && azimuth <= 360)) {
            throw new InputRefused(
                    "an azimuth of " + parts.get(0) + " degrees is outside 0 to 360",
                    "count from north through east, azimuth before altitude");
        }
        return new Horizon.Point(Angle.ofDegrees(azimuth), Angle.ofDegrees(altitude));
    }

    private static InputRefused notACorner(String typed) {
        return new InputRefused(
                "'" + typed.strip() + "' is not a skyline corner",
                "write azimuth,altitude in degrees, azimuth from north through east; for example 95,22.5");
    }
}
