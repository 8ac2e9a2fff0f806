package polewright.app.input;

import java.util.List;
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
            return Site.ofDegrees(Double.parseDouble(parts.get(0)), Double.parseDouble(parts.get(1)), height);
        } catch (NumberFormatException e) {
            throw notASite(typed);
        }
    }

    private static InputRefused notASite(String typed) {
        return new InputRefused(
                "'" + typed + "' is not a site",
                "write latitude,longitude[,height]: degrees, north and east positive, metres; for example 54.60,-2.90,240");
    }
}
