package polewright.operations.sighting;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.Map;
import polewright.operations.input.BodyFinder;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;

/** Logged values as they can be typed again. */
final class TypedText {
    // More digits than are ever typed, but few enough that 54.2 does not become 54.200000000000003.
    private static final MathContext FIGURES = new MathContext(9);

    private TypedText() {}

    static String degrees(Angle angle) {
        return figure(angle.degrees());
    }

    static String figure(double value) {
        return BigDecimal.valueOf(value).round(FIGURES).stripTrailingZeros().toPlainString();
    }

    /** A star known by name gives its name; any other, its coordinates. */
    static String body(SkyBody body) {
        if (!(body instanceof FixedStar star)) {
            return body.label();
        }
        try {
            if (BodyFinder.named(star.label()).equals(star)) {
                return star.label();
            }
        } catch (InputRefused unknownByThatName) {
            // The coordinates identify it.
        }
        return degrees(star.star().rightAscension()) + "," + degrees(star.star().declination());
    }

    /** A default uncertainty is left out, as when it was typed. */
    static Map<String, String> withSigma(Map<String, String> values, double sigma, double usual) {
        Map<String, String> all = new LinkedHashMap<>(values);
        if (!figure(sigma).equals(figure(usual))) {
            all.put(SightingActions.SIGMA_DEG.name(), figure(sigma));
        }
        return all;
    }

    static Map<String, String> withSigma(Map<String, String> values, Angle sigma, Angle usual) {
        return withSigma(values, sigma.degrees(), usual.degrees());
    }
}
