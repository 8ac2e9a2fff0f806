package polewright.sky;

import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

/**
 * The stars of the reference tables (altaz, pole-stars), with exactly the values from which those tables were computed:
 * ICRS, epoch J2000.0. All values of Polaris, Vega and Arcturus agree with
 * seandepagnier/celestial_navigation_pi, src/Sight.cpp, 662b616c49a9; those of Sigma Octantis were checked in public
 * text.
 */
public final class ReferenceStars {
    public static final CatalogueStar POLARIS =
            star(hms(2, 31, 49.09456), dms(89, 15, 50.7923), 44.48, -11.85, 7.54, -16.42);
    public static final CatalogueStar VEGA =
            star(hms(18, 36, 56.33635), dms(38, 47, 1.2802), 200.94, 286.23, 130.23, -20.60);
    public static final CatalogueStar ARCTURUS =
            star(hms(14, 15, 39.67207), dms(19, 10, 56.6730), -1093.39, -2000.06, 88.83, -5.19);
    public static final CatalogueStar SIGMA_OCTANTIS =
            star(hms(21, 8, 46.86357), dms(88, 57, 23.3983).negated(), 26.323, 4.721, 11.1005, 11.90);

    private ReferenceStars() {}

    public static CatalogueStar named(String name) {
        return switch (name) {
            case "Polaris" -> POLARIS;
            case "Vega" -> VEGA;
            case "Arcturus" -> ARCTURUS;
            case "Sigma Octantis" -> SIGMA_OCTANTIS;
            default -> throw new IllegalArgumentException("no reference star " + name);
        };
    }

    public static Angle hms(int hours, int minutes, double seconds) {
        return Angle.ofHours(hours + minutes / 60.0 + seconds / 3600);
    }

    public static Angle dms(int degrees, int minutes, double seconds) {
        return Angle.ofDegrees(degrees + minutes / 60.0 + seconds / 3600);
    }

    private static CatalogueStar star(
            Angle ra, Angle dec, double pmRaMas, double pmDecMas, double parallaxMas, double radialKmPerSecond) {
        return new CatalogueStar(ra, dec, pmRaMas, pmDecMas, parallaxMas, radialKmPerSecond);
    }
}
