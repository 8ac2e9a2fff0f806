package polewright.data;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Builds {@code star-colours.tsv}: B − V of the stars that observers find by eye. */
public final class BuildStarColours {
    private static final double FAINTEST = 3.6;

    private BuildStarColours() {}

    public static void main(String[] arguments) throws IOException {
        Sources sources = Sources.of(arguments);
        JsonNode features = new ObjectMapper()
                .readTree(Sources.existing(sources.celestial().resolve("stars.8.json"), HipparcosStars.PACKAGE)
                        .toFile())
                .get("features");
        Map<Integer, String> byNumber = new TreeMap<>();
        for (JsonNode feature : features) {
            JsonNode properties = feature.get("properties");
            String colour = properties.get("bv").asText().strip();
            if (properties.get("mag").asDouble() <= FAINTEST && !colour.isEmpty()) {
                byNumber.put(feature.get("id").asInt(), TableFile.number(Double.parseDouble(colour), 3));
            }
        }
        TableFile.write(
                sources.out().resolve("star-colours.tsv"),
                List.of(
                        "Colours of stars to V 3.6. Made by polewright.data.BuildStarColours.",
                        "Source: stars.8.json of d3-celestial (BSD-3-Clause), after the Hipparcos Catalogue.",
                        "Hipparcos number, B - V"),
                byNumber.entrySet().stream()
                        .map(entry -> entry.getKey() + "\t" + entry.getValue())
                        .toList());
    }
}
