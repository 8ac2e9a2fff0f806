package polewright.app.input;

import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;

/** {@code LAT,LON[,HEIGHT]}: degrees, north and east positive; metres. */
public final class SiteInput implements ITypeConverter<Site> {
    @Override
    public Site convert(String typed) {
        String[] parts = typed.strip().split("\\s*,\\s*|\\s+");
        if (parts.length < 2 || parts.length > 3) {
            throw notASite(typed);
        }
        try {
            double height = parts.length == 3 ? Double.parseDouble(parts[2]) : 0;
            return Site.ofDegrees(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]), height);
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
