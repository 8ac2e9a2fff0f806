package polewright.operations.input;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.MountDisplay;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * Reads centrings from a table: a heading that names the columns, then one centring per line. Columns {@code time},
 * {@code star}, {@code ra} (or {@code ha}), {@code dec}; optionally {@code equinox} ({@code date} or {@code j2000})
 * and {@code sigma_arcmin}. Separated by commas, semicolons or tabs; lines that begin with {@code #} are comments.
 */
public final class CentringTable {
    private CentringTable() {}

    /**
     * Reads the whole table or nothing of it.
     *
     * @throws InputRefused if a line is not valid; the message gives its number
     */
    public static List<CentredStar> read(String text) {
        List<CentredStar> centrings = new ArrayList<>();
        List<String> columns = List.of();
        String separator = ",";
        int number = 0;
        for (String raw : text.lines().toList()) {
            number++;
            String line = raw.replace("\uFEFF", "").strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            if (columns.isEmpty()) {
                separator = line.contains(";") ? ";" : line.contains("\t") ? "\t" : ",";
                columns = columns(line, separator);
                continue;
            }
            try {
                centrings.add(centring(columns, fields(line, separator)));
            } catch (InputRefused e) {
                throw e.at("line " + number);
            }
        }
        if (centrings.isEmpty()) {
            throw new InputRefused(
                    "it has no centrings", "write a header line, time,star,ra,dec, then one line per star");
        }
        return centrings;
    }

    private static List<String> columns(String line, String separator) {
        List<String> columns = fields(line.toLowerCase(Locale.ROOT), separator);
        boolean isWhole = columns.containsAll(List.of("time", "star", "dec"))
                && (columns.contains("ra") || columns.contains("ha"));
        if (!isWhole) {
            throw new InputRefused(
                    "the header '" + line + "' lacks a column", "give at least time,star,ra,dec (or ha instead of ra)");
        }
        return columns;
    }

    private static List<String> fields(String line, String separator) {
        return Arrays.stream(line.split(separator, -1)).map(String::strip).toList();
    }

    private static CentredStar centring(List<String> columns, List<String> fields) {
        if (fields.size() != columns.size()) {
            throw new InputRefused(
                    fields.size() + " fields for " + columns.size() + " columns", "give one field for each column");
        }
        boolean isHourAngle = columns.contains("ha");
        String first = fields.get(columns.indexOf(isHourAngle ? "ha" : "ra"));
        MountReadingInput.Typed typed = MountReadingInput.of(first, fields.get(columns.indexOf("dec")));
        MountDisplay display = isHourAngle
                ? new MountDisplay.HourAngle(typed.first(), typed.declination())
                : new MountDisplay.RightAscension(typed.first(), typed.declination(), isJ2000(columns, fields));
        return new CentredStar(
                new UtcInput().convert(fields.get(columns.indexOf("time"))),
                BodyFinder.named(fields.get(columns.indexOf("star"))),
                display,
                false,
                sigma(columns, fields));
    }

    private static boolean isJ2000(List<String> columns, List<String> fields) {
        int column = columns.indexOf("equinox");
        String equinox = column < 0 ? "date" : fields.get(column).toLowerCase(Locale.ROOT);
        if (!equinox.equals("date") && !equinox.equals("j2000")) {
            throw new InputRefused("the equinox '" + equinox + "' is not known", "write date or j2000");
        }
        return equinox.equals("j2000");
    }

    private static Angle sigma(List<String> columns, List<String> fields) {
        int column = columns.indexOf("sigma_arcmin");
        if (column < 0 || fields.get(column).isEmpty()) {
            return CentredStar.USUAL_SIGMA;
        }
        if (!NumberInput.isNumber(fields.get(column))) {
            throw new InputRefused(
                    "'" + fields.get(column) + "' is not an uncertainty", "give arcminutes, such as 0.5");
        }
        return Angle.ofArcminutes(NumberInput.of(fields.get(column)));
    }
}
