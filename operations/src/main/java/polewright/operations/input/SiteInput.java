package polewright.operations.input;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
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
        double latitude = degrees(parts.get(0), "N", "S", typed);
        double longitude = degrees(parts.get(1), "E", "W", typed);
        double height = parts.size() == 3 ? number(parts.get(2), typed) : 0;
        if (Math.abs(longitude) > 180) {
            throw new InputRefused(
                    "longitude " + PlainNumber.asTyped(longitude) + " is outside -180 to 180 degrees",
                    Math.abs(longitude) <= 360
                            ? "east is positive. Write "
                                    + PlainNumber.asTyped(longitude - Math.copySign(360, longitude))
                                    + " if you mean that"
                            : "give latitude first, then longitude, east positive");
        }
        return Site.ofDegrees(latitude, longitude, height);
    }

    /** The site as it is typed: {@code 54.6,-2.9,240}, without a height of zero. */
    public static String typed(Site site) {
        String place = PlainNumber.asTyped(site.latitude().degrees()) + ","
                + PlainNumber.asTyped(site.longitude().degrees());
        return site.heightMetres() == 0 ? place : place + "," + PlainNumber.asTyped(site.heightMetres());
    }

    /** {@code 54.6}, {@code 54.6N}, {@code 2.9W}: a letter replaces the sign. */
    private static double degrees(String part, String positive, String negative, String typed) {
        String upper = part.toUpperCase(Locale.ROOT);
        boolean isNegative = upper.endsWith(negative);
        if (!isNegative && !upper.endsWith(positive)) {
            return number(part, typed);
        }
        String figures = upper.substring(0, upper.length() - 1);
        if (figures.startsWith("-") || figures.startsWith("+")) {
            throw new InputRefused(
                    "'" + part + "' has a sign and a letter",
                    "leave out one of them, such as " + figures.substring(1) + upper.substring(upper.length() - 1));
        }
        return isNegative ? -number(figures, typed) : number(figures, typed);
    }

    private static double number(String part, String typed) {
        if (!NumberInput.isNumber(part)) {
            throw notASite(typed);
        }
        return NumberInput.of(part);
    }

    private static InputRefused notASite(String typed) {
        return new InputRefused(
                "'" + typed + "' is not a site",
                "write latitude,longitude[,height]: degrees, north and east positive, metres; for example"
                        + " 54.60,-2.90,240");
    }
}
