package polewright.sky.body;

import java.util.Locale;
import java.util.Optional;

/**
 * The Sun, the Moon and the planets covered by {@link SolarSystem}.
 *
 * <p>Largest error of the geocentric direction, measured against JPL's DE405 at 400 dates per body, 1972 to 2060 (a
 * table of 40 of them is in the test {@code SolarSystemAgainstJplTest}). It was not measured from 2060 to 2100.
 *
 * <table>
 * <caption>Accuracy</caption>
 * <tr><th>body</th><th>theory</th><th>largest</th><th>RMS</th></tr>
 * <tr><td>Sun</td><td>SOFA epv00</td><td>0.01″</td><td>0.003″</td></tr>
 * <tr><td>Moon</td><td>SOFA moon98 (Meeus's abridged ELP2000-82)</td><td>12″</td><td>3.5″</td></tr>
 * <tr><td>Mercury</td><td>VSOP87B, truncated</td><td>0.05″</td><td>0.01″</td></tr>
 * <tr><td>Venus</td><td>VSOP87B, truncated</td><td>0.11″</td><td>0.03″</td></tr>
 * <tr><td>Mars</td><td>VSOP87B, truncated</td><td>0.31″</td><td>0.06″</td></tr>
 * <tr><td>Jupiter</td><td>VSOP87B, truncated</td><td>0.29″</td><td>0.16″</td></tr>
 * <tr><td>Saturn</td><td>VSOP87B, truncated</td><td>0.46″</td><td>0.23″</td></tr>
 * <tr><td>Uranus</td><td>VSOP87B, truncated</td><td>1.8″</td><td>0.9″</td></tr>
 * <tr><td>Neptune</td><td>VSOP87B, truncated</td><td>3.2″</td><td>1.7″</td></tr>
 * </table>
 */
public enum SolarSystemBody implements SkyBody {
    SUN("the Sun", 695_700),
    MOON("the Moon", 1_737.4),
    MERCURY("Mercury", 2_440.53),
    VENUS("Venus", 6_051.8),
    MARS("Mars", 3_396.19),
    JUPITER("Jupiter", 71_492),
    SATURN("Saturn", 60_268),
    URANUS("Uranus", 25_559),
    NEPTUNE("Neptune", 24_764);

    private final String label;
    private final double equatorialRadiusKm;

    SolarSystemBody(String label, double equatorialRadiusKm) {
        this.label = label;
        this.equatorialRadiusKm = equatorialRadiusKm;
    }

    /** The body with a name in any case, with or without "the"; empty when there is none. */
    public static Optional<SolarSystemBody> named(String name) {
        String bare = name.strip().toLowerCase(Locale.ROOT).replaceFirst("^the\\s+", "");
        for (SolarSystemBody body : values()) {
            if (body.name().toLowerCase(Locale.ROOT).equals(bare)) {
                return Optional.of(body);
            }
        }
        return Optional.empty();
    }

    @Override
    public String label() {
        return label;
    }

    /**
     * Radius of the disc in kilometres, equatorial where the body is flattened. Source: IAU 2015 Resolution B3 (Sun);
     * B. A. Archinal and others, report of the IAU Working Group on Cartographic Coordinates 2015, table 4 and 5
     * (2018).
     */
    public double equatorialRadiusKm() {
        return equatorialRadiusKm;
    }

    /** Whether it is one of the seven planets seen from Earth. */
    public boolean isPlanet() {
        return this != SUN && this != MOON;
    }
}
