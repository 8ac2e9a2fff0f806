package polewright.app.input;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;

/** {@code LAT,LON[,HEIGHT]}: degrees, north and east positive; metres. */
public final class SiteInput implements ITypeConverter<Site> {
    private static final Pattern SEPARATOR = Pattern.compile("\\s*,\\s*|\\s+");

    @Override
    public Site convert(String typed) {
        List<String> parts = SEPARATOR.splitAsStream(typed.strip()).toList();
        if (parts.size() < 2 || parts.size() > 3) {
            throw notASite(typed);
        }
        try {
            double height = parts.size() == 3 ? Double.parseDouble(parts.get(2)) : 0;
            return Site.ofDegrees(degrees(parts.get(0), "N", "S"), degrees(parts.get(1), "E", "W"), height);
        } catch (NumberFormatException e) {
            throw notASite(typed);
        }
    }

    /** {@code 54.6}, {@code 54.6N}, {@code 2.9W}: a letter stands for the sign. */
    private static double degrees(String typed, String positive, String negative) {
        String upper = typed.toUpperCase(Locale.ROOT);
        if (upper.endsWith(positive)) {
            return Double.parseDouble(upper.substring(0, upper.length() - 1));
        }
        if (upper.endsWith(negative)) {
            return -Double.parseDouble(upper.substring(0, upper.length() - 1));
        }
        return Double.parseDouble(typed);
    }

    private static InputRefused notASite(String typed) {
        return new InputRefused(
                "'" + typed + "' is not a site",
                "write latitude,longitude[,height]: degrees, north and east positive, metres; for example 54.60,-2.90,240");
    }
}
