package polewright.data;

import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jastronomy.jsofa.JSOFA;
import polewright.sky.body.HeliocentricSeries;
import polewright.sky.time.JulianDate;
import polewright.sky.time.TimeScale;

/**
 * Builds the planets' series {@code mercury.txt} to {@code neptune.txt}: VSOP87 version B without its smallest terms.
 *
 * <p>From the npm package {@code astronomia} 4.2.0 (MIT), files {@code data/vsop87B*.js}. It also prints the
 * truncation error: the greatest change of the direction from the Earth's centre over 1000 dates, 1972 to 2100.
 */
public final class BuildPlanetSeries {
    private static final List<String> PLANETS =
            List.of("mercury", "venus", "mars", "jupiter", "saturn", "uranus", "neptune");
    /** Smallest |A|·0.1ⁿ kept: radians for longitude and latitude, fraction of the mean distance for the radius. */
    private static final double SMALLEST = 3e-8;

    private static final double FIRST_JD = 2441317.5;
    private static final double LAST_JD = 2488435.5;
    private static final int DATES = 1000;

    private BuildPlanetSeries() {}

    /**
     * Writes the tables.
     *
     * @param args the unpacked package {@code astronomia}; the folder to write to
     * @throws IOException when either cannot be used
     */
    public static void main(String[] args) throws IOException {
        if (args.length != 2) {
            throw new IllegalArgumentException("give the folder of the package astronomia and the folder to write to");
        }
        JsonMapper mapper = JsonMapper.builder()
                .enable(JsonReadFeature.ALLOW_UNQUOTED_FIELD_NAMES)
                .build();
        for (String planet : PLANETS) {
            String script = Files.readString(Path.of(args[0], "data", "vsop87B" + planet + ".js"));
            JsonNode series = mapper.readTree(script.substring(script.indexOf('{'), script.lastIndexOf('}') + 1));
            String kept = table(planet, series, SMALLEST);
            Files.writeString(Path.of(args[1], planet + ".txt"), kept, StandardCharsets.US_ASCII);
            double worst = greatestChangeArcsec(
                    HeliocentricSeries.parse(kept.lines()),
                    HeliocentricSeries.parse(table(planet, series, 0).lines()));
            System.out.printf(
                    Locale.ROOT,
                    "%-8s %4d terms, %.2f\" at worst%n",
                    planet,
                    kept.lines().count() - 2,
                    worst);
        }
    }

    static String table(String planet, JsonNode series, double smallest) {
        var table = new StringBuilder("# VSOP87B, " + planet + ", terms of " + smallest + " and more (Bretagnon and"
                + " Francou 1988; from npm astronomia 4.2.0, MIT)\n# coordinate power amplitude phase rate, radians and"
                + " au, thousands of Julian years since J2000.0\n");
        double meanDistanceAu = series.path("R").path("0").path(0).path(0).asDouble();
        for (String coordinate : List.of("L", "B", "R")) {
            double scale = coordinate.equals("R") ? meanDistanceAu : 1;
            JsonNode powers = series.path(coordinate);
            for (int power = 0; power < powers.size(); power++) {
                for (JsonNode term : powers.path(String.valueOf(power))) {
                    if (Math.abs(term.path(0).asDouble()) * Math.pow(0.1, power) >= smallest * scale) {
                        table.append(coordinate)
                                .append(' ')
                                .append(power)
                                .append(' ')
                                .append(term.path(0).asDouble())
                                .append(' ')
                                .append(term.path(1).asDouble())
                                .append(' ')
                                .append(term.path(2).asDouble())
                                .append('\n');
                    }
                }
            }
        }
        return table.toString();
    }

    private static double greatestChangeArcsec(HeliocentricSeries kept, HeliocentricSeries whole) {
        var random = new SplittableRandom(1988);
        double greatest = 0;
        for (int i = 0; i < DATES; i++) {
            var date = new JulianDate(TimeScale.TT, FIRST_JD + random.nextDouble() * (LAST_JD - FIRST_JD), 0);
            double[][] earth = new double[2][3];
            JSOFA.jauEpv00(date.day(), date.fraction(), earth, new double[2][3]);
            Vector3D earthAu = new Vector3D(earth[0]);
            double angle = Vector3D.angle(
                    kept.heliocentricAu(date).subtract(earthAu),
                    whole.heliocentricAu(date).subtract(earthAu));
            greatest = Math.max(greatest, Math.toDegrees(angle) * 3600);
        }
        return greatest;
    }
}
