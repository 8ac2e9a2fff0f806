package polewright.data;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import polewright.sky.atlas.GreekLetter;

/**
 * Hipparcos positions (J2000.0, to 0.0001°) with magnitude V, names and designations, in order of Hipparcos number.
 */
record HipparcosStars(List<Star> stars, StarPlaces places) {
    static final String PACKAGE = "d3-celestial (npm)";

    /**
     * One star.
     *
     * @param names at most one, English
     * @param designations Bayer letters and Flamsteed numbers
     */
    record Star(
            int number,
            double raDeg,
            double decDeg,
            double magnitude,
            List<String> names,
            List<String> designations,
            List<String> numbers) {
        double[] unit() {
            return StarPlaces.unit(raDeg, decDeg);
        }
    }

    /**
     * Designations given to the wrong star: Flamsteed's numbers increase with right ascension, which reveals it; and
     * an infrared source.
     */
    private static final Set<String> WRONG = Set.of("47965/44 UMa", "664/5 Psc", "8271/3 Psc", "26221/Becklin's Star");

    static HipparcosStars read(Path folder) throws IOException {
        ObjectMapper json = new ObjectMapper();
        JsonNode names = json.readTree(
                Sources.existing(folder.resolve("starnames.json"), PACKAGE).toFile());
        JsonNode features = json.readTree(Sources.existing(folder.resolve("stars.14.json"), PACKAGE)
                        .toFile())
                .get("features");
        TreeMap<Integer, Star> byNumber = new TreeMap<>();
        for (JsonNode feature : features) {
            JsonNode place = feature.get("geometry").get("coordinates");
            int number = feature.get("id").asInt();
            JsonNode name = names.path(String.valueOf(number));
            double lon = place.get(0).asDouble();
            byNumber.put(
                    number,
                    new Star(
                            number,
                            lon < 0 ? lon + 360 : lon,
                            place.get(1).asDouble(),
                            feature.get("properties").get("mag").asDouble(),
                            right(number, List.of(name.path("name").asText("").strip())),
                            right(number, designations(name)),
                            numbers(number, name)));
        }
        List<Star> stars = List.copyOf(byNumber.values());
        double[] vectors = new double[3 * stars.size()];
        for (int i = 0; i < stars.size(); i++) {
            System.arraycopy(stars.get(i).unit(), 0, vectors, 3 * i, 3);
        }
        return new HipparcosStars(stars, new StarPlaces(vectors));
    }

    private static List<String> right(int number, List<String> texts) {
        return texts.stream()
                .filter(text -> !text.isEmpty() && !WRONG.contains(number + "/" + text))
                .toList();
    }

    private static List<String> designations(JsonNode name) {
        List<String> designations = new ArrayList<>();
        String constellation = name.path("c").asText("");
        if (constellation.isEmpty()) {
            return designations;
        }
        String bayer = name.path("bayer").asText("");
        if (bayer.matches("\\P{ASCII}[1-9]?")) {
            GreekLetter.ofSymbol(bayer.codePointAt(0))
                    .ifPresent(letter ->
                            designations.add(letter.abbreviation() + bayer.substring(1) + " " + constellation));
        } else if (bayer.matches("[A-Za-z][1-9]?")) {
            designations.add(bayer + " " + constellation);
        }
        if (name.path("flam").asText("").matches("[1-9][0-9]*")) {
            designations.add(name.path("flam").asText() + " " + constellation);
        }
        String variable = name.path("var").asText("");
        if (variable.matches("[A-Z]{2}|V0*[1-9][0-9]{2,3}")) {
            designations.add(variable.replaceFirst("^V0+", "V") + " " + constellation);
        }
        return designations;
    }

    private static List<String> numbers(int number, JsonNode name) {
        String draper = name.path("hd").asText("").replaceAll("[^0-9]", "");
        return draper.isEmpty() ? List.of("HIP " + number) : List.of("HIP " + number, "HD " + draper);
    }
}
