package polewright.data;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Builds {@code constellations.tsv} and {@code constellation-borders.tsv}. */
public final class BuildConstellations {
    /** Rows of Roman's table. */
    private static final int STRIPS = 357;

    private static final String BORDERS_PACKAGE = "astronomy-engine (npm)";

    // "[83, 0, 8640, 2112] // UMi": constellation, right ascension in 1/360 h from and to, declination in 1/24 degree.
    private static final Pattern STRIP =
            Pattern.compile("\\[\\d+, ([\\d.]+), ([\\d.]+), (-?[\\d.]+)\\] // ([A-Z][A-Za-z]{2})");

    /** Where the list of names differs from the IAU's forms. */
    private static final Map<String, String> CORRECTIONS = Map.of(
            "CrA", "Corona Australis\tCoronae Australis",
            "Cru", "Crux\tCrucis",
            "Ser", "Serpens\tSerpentis");

    private BuildConstellations() {}

    public static void main(String[] arguments) throws IOException {
        Sources sources = Sources.of(arguments);
        TableFile.write(
                sources.out().resolve("constellations.tsv"),
                List.of(
                        "The 88 constellations. Made by polewright.data.BuildConstellations.",
                        "Source: d3-celestial (BSD-3-Clause), three forms corrected.",
                        "abbreviation, name, genitive"),
                names(sources.celestial()));
        TableFile.write(
                sources.out().resolve("constellation-borders.tsv"),
                List.of(
                        "Borders of the constellations, mean equator and equinox of B1875.0. Made by"
                                + " polewright.data.BuildConstellations.",
                        "Source: table of Roman 1987 (CDS VI/42) as carried by astronomy-engine (MIT).",
                        "The first row that holds a place names its constellation.",
                        "abbreviation, RA from and to (exclusive), Dec from, in 1/24 degree"),
                borders(sources.borders()));
    }

    private static List<String> names(Path celestial) throws IOException {
        JsonNode features = new ObjectMapper()
                .readTree(Sources.existing(celestial.resolve("constellations.json"), HipparcosStars.PACKAGE)
                        .toFile())
                .get("features");
        TreeMap<String, String> rows = new TreeMap<>();
        for (JsonNode feature : features) {
            String abbreviation = feature.get("id").asText();
            JsonNode properties = feature.get("properties");
            String words = properties.get("name").asText() + "\t"
                    + properties.get("gen").asText();
            rows.put(abbreviation, abbreviation + "\t" + CORRECTIONS.getOrDefault(abbreviation, words));
        }
        return List.copyOf(rows.values());
    }

    private static List<String> borders(Path script) throws IOException {
        Matcher strips = STRIP.matcher(Files.readString(Sources.existing(script, BORDERS_PACKAGE)));
        List<String> rows = new ArrayList<>();
        while (strips.find()) {
            rows.add(String.join("\t", strips.group(4), strips.group(1), strips.group(2), strips.group(3)));
        }
        if (rows.size() != STRIPS) {
            throw new IOException(script + " has " + rows.size() + " rows of borders, expected " + STRIPS);
        }
        return rows;
    }
}
