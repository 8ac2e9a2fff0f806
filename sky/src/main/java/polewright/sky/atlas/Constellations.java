package polewright.sky.atlas;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jastronomy.jsofa.JSOFA;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * The 88 constellations and their boundaries.
 *
 * <p>The boundaries follow hour circles and parallels of the mean equator and equinox of B1875.0. An ICRS position is
 * precessed to that equinox with the IAU 1976 precession (SOFA {@code pmat76}); the frame bias and the difference
 * between the FK4 and FK5 systems (together under 2″) are left out, so only positions closer than that to a boundary
 * may fall on its other side.
 *
 * <p>Sources: E. Delporte, Délimitation scientifique des constellations, 1930; N. G. Roman, Identification of a
 * constellation from a position, PASP 99, 695 (1987), table of CDS VI/42.
 */
public final class Constellations {
    /** B1875.0 as a Julian date: 2415020.31352 + (1875 − 1900) · 365.242198781 (Lieske 1979). */
    private static final double B1875_JULIAN_DATE = 2415020.31352 - 25 * 365.242198781;

    private final Map<String, Constellation> byAbbreviation;
    private final List<Strip> strips;
    private final double[][] toB1875 = JSOFA.jauPmat76(B1875_JULIAN_DATE, 0);

    /**
     * The sky north of a parallel between two hour circles, except where an earlier strip contains the position.
     *
     * @param fromRaDeg B1875.0, inclusive
     * @param toRaDeg B1875.0, exclusive
     * @param fromDecDeg B1875.0, the southern edge, inclusive
     */
    private record Strip(Constellation constellation, double fromRaDeg, double toRaDeg, double fromDecDeg) {}

    private Constellations() {
        Map<String, Constellation> all = new LinkedHashMap<>();
        for (String[] row : BundledTable.rows("constellations.tsv", 3)) {
            all.put(row[0], new Constellation(row[0], row[1], row[2]));
        }
        this.byAbbreviation = Collections.unmodifiableMap(all);
        this.strips = BundledTable.rows("constellation-borders.tsv", 4).stream()
                .map(row -> new Strip(
                        byAbbreviationOrFail(row[0]),
                        Double.parseDouble(row[1]) / 24,
                        Double.parseDouble(row[2]) / 24,
                        Double.parseDouble(row[3]) / 24))
                .toList();
    }

    public static Constellations bundled() {
        return Bundled.CONSTELLATIONS;
    }

    private static final class Bundled {
        static final Constellations CONSTELLATIONS = new Constellations();
    }

    /** All 88, by abbreviation. */
    public List<Constellation> all() {
        return List.copyOf(byAbbreviation.values());
    }

    /** The constellation with the IAU's three-letter abbreviation, case-sensitive: {@code UMa}. */
    public Optional<Constellation> abbreviated(String threeLetters) {
        return Optional.ofNullable(byAbbreviation.get(threeLetters));
    }

    private Constellation byAbbreviationOrFail(String abbreviation) {
        Constellation found = byAbbreviation.get(abbreviation);
        if (found == null) {
            throw new IllegalStateException("no constellation is abbreviated " + abbreviation);
        }
        return found;
    }

    /** The constellation that contains an ICRS position. */
    public Constellation at(Angle rightAscension, Angle declination) {
        if (!(Math.abs(declination.degrees()) <= 90 + 1e-9)) {
            throw new InputRefused(
                    "declination " + PlainNumber.asTyped(declination.degrees()) + " is beyond 90 degrees",
                    "give right ascension first, then declination, in degrees");
        }
        double cosDec = declination.cos();
        double[] j2000 = {cosDec * rightAscension.cos(), cosDec * rightAscension.sin(), declination.sin()};
        double[] b1875 = JSOFA.jauRxp(toB1875, j2000);
        double raDeg =
                new Angle(Math.atan2(b1875[1], b1875[0])).wrappedPositive().degrees();
        double decDeg = Math.toDegrees(Math.atan2(b1875[2], Math.hypot(b1875[0], b1875[1])));
        for (Strip strip : strips) {
            if (strip.fromDecDeg <= decDeg && strip.fromRaDeg <= raDeg && raDeg < strip.toRaDeg) {
                return strip.constellation;
            }
        }
        throw new IllegalStateException("the constellation borders leave a gap at " + raDeg + ", " + decDeg);
    }
}
