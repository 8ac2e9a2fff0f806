package polewright.sky.body;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.time.JulianDate;

/**
 * A planet's heliocentric position from a trigonometric series, VSOP87 version B.
 *
 * <p>Input: TT (in place of TDB; 2 ms apart). Output: au from the Sun's centre, in the axes of the FK5 equator and
 * equinox J2000.0, which are taken as the ICRS axes (0.02″ apart at most).
 *
 * <p>Each coordinate is Σ Tⁿ A cos(B + C T), T in thousands of Julian years since J2000.0: ecliptic longitude and
 * latitude in radians, radius in au, in the dynamical ecliptic and equinox J2000. They are rotated to FK5 with the
 * matrix given in the theory's own notes. Terms with |A| · 0.1ⁿ under 3e-8 rad (or 3e-8 of the mean distance) were left
 * out by {@code polewright.data.BuildPlanetSeries}, which measures the error: at most 0.34″ (Mars) seen from Earth,
 * 1972 to 2100.
 *
 * <p>Source: P. Bretagnon and G. Francou, <i>Planetary theories in rectangular and spherical variables: VSOP87
 * solutions</i>, Astronomy and Astrophysics 202 (1988) 309. Tables are loaded on first use of a planet.
 */
public final class HeliocentricSeries {
    private static final String TABLES = "/polewright/sky/body/vsop87b/";
    private static final double DAYS_PER_MILLENNIUM = 365_250;
    private static final int VALUES_PER_TERM = 3;

    private static final Map<SolarSystemBody, HeliocentricSeries> LOADED = new EnumMap<>(SolarSystemBody.class);

    /** By coordinate (L, B, R), then by power of T: amplitude, phase and rate, term after term. */
    private final List<List<double[]>> coordinates;

    private HeliocentricSeries(List<List<double[]>> coordinates) {
        this.coordinates = coordinates;
    }

    /** The bundled series of a planet. */
    static HeliocentricSeries of(SolarSystemBody planet) {
        if (!planet.isPlanet()) {
            throw new IllegalArgumentException(planet + " is not a planet");
        }
        synchronized (LOADED) {
            return LOADED.computeIfAbsent(planet, HeliocentricSeries::load);
        }
    }

    private static HeliocentricSeries load(SolarSystemBody planet) {
        String name = TABLES + planet.name().toLowerCase(Locale.ROOT) + ".txt";
        try (InputStream bytes = HeliocentricSeries.class.getResourceAsStream(name)) {
            if (bytes == null) {
                throw new IllegalStateException("the jar lacks " + name);
            }
            return parse(new BufferedReader(new InputStreamReader(bytes, StandardCharsets.US_ASCII)).lines());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Parses a series from its table: lines {@code L|B|R power amplitude phase rate}, grouped by coordinate and power
     * in ascending order; lines that begin with {@code #} are comments.
     */
    public static HeliocentricSeries parse(Stream<String> lines) {
        List<List<List<Double>>> terms = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        lines.filter(line -> !line.startsWith("#")).forEach(line -> {
            String[] words = line.split(" ", -1);
            List<List<Double>> powers = terms.get("LBR".indexOf(words[0]));
            int power = Integer.parseInt(words[1]);
            while (powers.size() <= power) {
                powers.add(new ArrayList<>());
            }
            for (int i = 0; i < VALUES_PER_TERM; i++) {
                powers.get(power).add(Double.valueOf(words[2 + i]));
            }
        });
        return new HeliocentricSeries(terms.stream()
                .map(powers -> powers.stream()
                        .map(values ->
                                values.stream().mapToDouble(Double::doubleValue).toArray())
                        .toList())
                .toList());
    }

    /** From the Sun, au, J2000 equatorial axes. */
    public Vector3D heliocentricAu(JulianDate tt) {
        double millennia = ((tt.day() - 2451545.0) + tt.fraction()) / DAYS_PER_MILLENNIUM;
        double longitude = sum(coordinates.get(0), millennia);
        double latitude = sum(coordinates.get(1), millennia);
        double radius = sum(coordinates.get(2), millennia);
        double x = radius * Math.cos(latitude) * Math.cos(longitude);
        double y = radius * Math.cos(latitude) * Math.sin(longitude);
        double z = radius * Math.sin(latitude);
        return new Vector3D(
                x + 0.000000440360 * y - 0.000000190919 * z,
                -0.000000479966 * x + 0.917482137087 * y - 0.397776982902 * z,
                0.397776982902 * y + 0.917482137087 * z);
    }

    private static double sum(List<double[]> powers, double millennia) {
        double total = 0;
        // Horner from the highest power down.
        for (int power = powers.size() - 1; power >= 0; power--) {
            double[] terms = powers.get(power);
            double sum = 0;
            for (int i = 0; i < terms.length; i += VALUES_PER_TERM) {
                sum += terms[i] * Math.cos(terms[i + 1] + terms[i + 2] * millennia);
            }
            total = total * millennia + sum;
        }
        return total;
    }
}
