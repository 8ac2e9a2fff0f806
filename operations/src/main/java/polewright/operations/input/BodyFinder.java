package polewright.operations.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.DeepSkyList;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.fields.BodyNames;
import polewright.sky.place.CatalogueStar;

/**
 * Finds anything in the sky by name: Sun, Moon and planets, stars by name or designation, deep-sky objects, or an
 * ICRS place as {@code RA,DEC} in degrees.
 */
public final class BodyFinder implements ITypeConverter<SkyBody>, BodyNames {
    private static final Pattern PLACE =
            Pattern.compile("\\s*([+-]?\\d+(?:\\.\\d*)?)\\s*,\\s*([+-]?\\d+(?:\\.\\d*)?)\\s*");

    @Override
    public SkyBody convert(String typed) {
        return named(typed);
    }

    @Override
    public Optional<SkyBody> find(String name) {
        return Optional.of(named(name));
    }

    /**
     * The body of that name.
     *
     * @throws InputRefused when nothing has that name; suggests similar names
     */
    public static SkyBody named(String name) {
        Optional<SolarSystemBody> near = SolarSystemBody.named(name);
        if (near.isPresent()) {
            return near.get();
        }
        Matcher place = PLACE.matcher(name);
        if (place.matches()) {
            return place(NumberInput.of(place.group(1)), NumberInput.of(place.group(2)));
        }
        var star = NamedStars.bundled().find(name);
        if (star.isPresent()) {
            return new FixedStar(star.get().label(), star.get().place());
        }
        var deepSky = DeepSkyList.bundled().find(name);
        if (deepSky.isPresent()) {
            return new FixedStar(deepSky.get().label(), deepSky.get().place());
        }
        throw unknown(name);
    }

    private static FixedStar place(double rightAscensionDeg, double declinationDeg) {
        if (!(rightAscensionDeg >= 0 && rightAscensionDeg < 360)) {
            throw new InputRefused(
                    "right ascension " + PlainNumber.asTyped(rightAscensionDeg) + " is outside 0 to 360 degrees",
                    "give degrees, not hours: RA,DEC such as 279.23,38.78");
        }
        return new FixedStar(
                String.format(Locale.ROOT, "RA %.4f Dec %+.4f", rightAscensionDeg, declinationDeg),
                CatalogueStar.fixed(Angle.ofDegrees(rightAscensionDeg), Angle.ofDegrees(declinationDeg)));
    }

    private static InputRefused unknown(String name) {
        List<String> near = new ArrayList<>(NamedStars.bundled().near(name));
        near.addAll(DeepSkyList.bundled().near(name));
        return new InputRefused(
                "nothing in the sky is called '" + name.strip() + "'",
                near.isEmpty()
                        ? "give a planet, a star such as Vega or alp Lyr, an object such as M 31, or RA,DEC in degrees"
                        : "did you mean " + String.join(", ", near.subList(0, Math.min(4, near.size()))) + "?");
    }
}
