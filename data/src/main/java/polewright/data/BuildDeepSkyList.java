package polewright.data;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jastronomy.jsofa.JSOFA;
import org.jspecify.annotations.Nullable;
import polewright.sky.atlas.DeepSkyKind;

/** Builds {@code deep-sky.tsv}. */
public final class BuildDeepSkyList {
    private static final double FAINTEST_PLAUSIBLE = 30;

    private static final double GALACTIC_NAME_DEG = 2;

    /** A magnitude this far from Messier's belongs to a neighbour, as do the position and size next to it. */
    private static final double ANOTHER_OBJECT_MAGNITUDES = 2;

    private static final Pattern GALACTIC = Pattern.compile("^(?:SNR G|PN G|PK) ?([0-9.]+)([+-][0-9.]+)");

    private static final Pattern NUMBERED = Pattern.compile("^(M|NGC|IC|C) (\\d+)$");

    private static final Map<String, DeepSkyKind> KINDS = Map.ofEntries(
            Map.entry("g", DeepSkyKind.GALAXY),
            Map.entry("s", DeepSkyKind.SPIRAL_GALAXY),
            Map.entry("s0", DeepSkyKind.LENTICULAR_GALAXY),
            Map.entry("e", DeepSkyKind.ELLIPTICAL_GALAXY),
            Map.entry("i", DeepSkyKind.IRREGULAR_GALAXY),
            Map.entry("sd", DeepSkyKind.DWARF_SPHEROIDAL_GALAXY),
            Map.entry("gg", DeepSkyKind.GALAXY_CLUSTER),
            Map.entry("oc", DeepSkyKind.OPEN_CLUSTER),
            Map.entry("gc", DeepSkyKind.GLOBULAR_CLUSTER),
            Map.entry("pos", DeepSkyKind.STAR_GROUP),
            Map.entry("pn", DeepSkyKind.PLANETARY_NEBULA),
            Map.entry("en", DeepSkyKind.EMISSION_NEBULA),
            Map.entry("rn", DeepSkyKind.REFLECTION_NEBULA),
            Map.entry("bn", DeepSkyKind.BRIGHT_NEBULA),
            Map.entry("dn", DeepSkyKind.DARK_NEBULA),
            Map.entry("sfr", DeepSkyKind.STAR_FORMING_REGION),
            Map.entry("snr", DeepSkyKind.SUPERNOVA_REMNANT));

    /** Names in everyday use that the source lacks (common practice). */
    private static final Map<String, List<String>> EVERYDAY_NAMES = Map.of(
            "NGC 5139", List.of("Omega Centauri"),
            "NGC 104", List.of("47 Tucanae"),
            "M 45", List.of("Seven Sisters"),
            "M 44", List.of("Praesepe", "Beehive Cluster"),
            "NGC 869", List.of("Double Cluster"),
            "M 42", List.of("Orion Nebula"),
            "M 13", List.of("Great Hercules Cluster", "Hercules Cluster"));

    private BuildDeepSkyList() {}

    /** One object before it becomes a row. */
    private record Entry(
            Set<String> designations,
            Set<String> names,
            DeepSkyKind kind,
            double raDeg,
            double decDeg,
            String magnitude,
            String size) {}

    public static void main(String[] arguments) throws IOException {
        Sources sources = Sources.of(arguments);
        Path folder = sources.celestial();
        JsonNode names = json(folder, "dsonames.json");
        Map<String, Entry> byDesignation = new HashMap<>();
        Map<String, Entry> all = new LinkedHashMap<>();
        // Messier's list has the better kinds and magnitudes, the long list the more precise positions and sizes.
        Map<String, JsonNode> messier = new LinkedHashMap<>();
        for (JsonNode feature : json(folder, "messier.json").get("features")) {
            messier.put("M " + feature.get("id").asText().substring(1), feature);
        }
        for (JsonNode feature : json(folder, "dsos.14.json").get("features")) {
            if (!placeIsPlausible(feature)) {
                System.out.println("left out, its place contradicts its name: " + feature);
                continue;
            }
            Entry entry = ofLongList(feature, names);
            // A second row of one object only adds its designations.
            Entry kept = all.computeIfAbsent(first(entry), key -> entry);
            kept.designations().addAll(entry.designations());
            kept.designations().forEach(designation -> byDesignation.putIfAbsent(designation, kept));
        }
        messier.forEach((designation, feature) -> {
            String also = feature.get("properties").get("desig").asText();
            Entry known = byDesignation.getOrDefault(designation, byDesignation.get(also));
            Entry entry = ofMessier(designation, also, feature, names, known);
            if (known != null) {
                all.values().remove(known);
            }
            all.put(designation, entry);
        });
        EVERYDAY_NAMES.forEach((designation, more) -> all.values().stream()
                .filter(entry -> entry.designations().contains(designation))
                .forEach(entry -> more.forEach(entry.names()::add)));
        List<String> rows = all.values().stream()
                .sorted(Comparator.comparing(entry -> sortKey(first(entry))))
                .map(BuildDeepSkyList::row)
                .toList();
        TableFile.write(
                sources.out().resolve("deep-sky.tsv"),
                List.of(
                        "Deep-sky objects, ICRS. Made by polewright.data.BuildDeepSkyList.",
                        "Source: d3-celestial (BSD-3-Clause).",
                        "designations, names, kind, RA deg, Dec deg, magnitude, longest and shortest extent in arcmin"),
                rows);
    }

    /** Some names contain galactic coordinates, which reveal rows of the source with shifted columns. */
    private static boolean placeIsPlausible(JsonNode feature) {
        if (Math.abs(latitude(feature)) > 90) {
            return false;
        }
        Matcher galactic = GALACTIC.matcher(feature.get("id").asText());
        if (!galactic.find()) {
            return true;
        }
        JSOFA.SphericalCoordinate icrs = JSOFA.jauG2icrs(
                Math.toRadians(Double.parseDouble(galactic.group(1))),
                Math.toRadians(Double.parseDouble(galactic.group(2))));
        double apart = JSOFA.jauSeps(
                icrs.alpha, icrs.delta, Math.toRadians(longitude(feature)), Math.toRadians(latitude(feature)));
        return Math.toDegrees(apart) <= GALACTIC_NAME_DEG;
    }

    private static String first(Entry entry) {
        return entry.designations().iterator().next();
    }

    private static JsonNode json(Path folder, String name) throws IOException {
        return new ObjectMapper()
                .readTree(Sources.existing(folder.resolve(name), HipparcosStars.PACKAGE)
                        .toFile());
    }

    private static Entry ofLongList(JsonNode feature, JsonNode allNames) {
        JsonNode properties = feature.get("properties");
        Set<String> designations = new LinkedHashSet<>();
        designations.add(properties.get("desig").asText().strip());
        designations.add(feature.get("id").asText().strip());
        Set<String> names = new LinkedHashSet<>();
        designations.forEach(designation -> addName(allNames.path(designation).path("name"), names));
        return new Entry(
                designations,
                names,
                kind(properties),
                longitude(feature),
                latitude(feature),
                properties.get("mag").asText(),
                properties.get("dim").asText());
    }

    private static Entry ofMessier(
            String designation, String also, JsonNode feature, JsonNode allNames, @Nullable Entry known) {
        JsonNode properties = feature.get("properties");
        Set<String> designations = new LinkedHashSet<>();
        designations.add(designation);
        if (NUMBERED.matcher(also).matches()) {
            designations.add(also);
        }
        Set<String> names = new LinkedHashSet<>();
        if (known != null) {
            designations.addAll(known.designations());
            names.addAll(known.names());
        }
        addName(allNames.path(designation).path("name"), names);
        addName(properties.get("alt"), names);
        Entry twin = known != null
                        && !isFarFrom(known.magnitude(), properties.get("mag").asDouble())
                ? known
                : null;
        return new Entry(
                designations,
                names,
                kind(properties),
                twin == null ? longitude(feature) : twin.raDeg(),
                twin == null ? latitude(feature) : twin.decDeg(),
                properties.get("mag").asText(),
                twin == null ? properties.get("dim").asText() : twin.size());
    }

    private static boolean isFarFrom(String longListMagnitude, double messierMagnitude) {
        String known = magnitude(longListMagnitude);
        return !known.isEmpty() && Math.abs(Double.parseDouble(known) - messierMagnitude) > ANOTHER_OBJECT_MAGNITUDES;
    }

    private static void addName(JsonNode name, Set<String> names) {
        String text = name.asText("").strip().replace('´', '\'');
        if (!text.isEmpty() && names.stream().noneMatch(text::equalsIgnoreCase)) {
            names.add(text);
        }
    }

    private static DeepSkyKind kind(JsonNode properties) {
        DeepSkyKind kind = KINDS.get(properties.get("type").asText());
        if (kind == null) {
            throw new IllegalStateException("no kind is known for " + properties);
        }
        return kind;
    }

    private static double longitude(JsonNode feature) {
        double degrees = feature.get("geometry").get("coordinates").get(0).asDouble();
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private static double latitude(JsonNode feature) {
        return feature.get("geometry").get("coordinates").get(1).asDouble();
    }

    /** Messier, NGC, IC by number, then the rest by name. */
    private static String sortKey(String designation) {
        Matcher numbered = NUMBERED.matcher(designation);
        if (!numbered.matches()) {
            return "9" + designation;
        }
        String catalogue = String.valueOf(List.of("M", "NGC", "IC", "C").indexOf(numbered.group(1)));
        return catalogue + String.format(Locale.ROOT, "%06d", Integer.parseInt(numbered.group(2)));
    }

    private static String row(Entry entry) {
        String[] size = entry.size().split("x", -1);
        // A few sizes have the shorter axis first.
        int longest = size.length == 2 && Double.parseDouble(size[1]) > Double.parseDouble(size[0]) ? 1 : 0;
        return String.join(
                "\t",
                TableFile.list(List.copyOf(entry.designations())),
                TableFile.list(List.copyOf(entry.names())),
                entry.kind().name(),
                TableFile.number(entry.raDeg(), 5),
                TableFile.number(entry.decDeg(), 5),
                entry.kind() == DeepSkyKind.DARK_NEBULA ? "" : magnitude(entry.magnitude()),
                extent(size[longest]),
                extent(size[size.length - 1 - longest]));
    }

    /** The source writes 999, or 0.0, for an unknown magnitude. */
    private static String magnitude(String text) {
        double value = Double.parseDouble(text);
        return value > 0 && value < FAINTEST_PLAUSIBLE ? TableFile.number(value, 2) : "";
    }

    private static String extent(String text) {
        return text.isBlank() || Double.parseDouble(text) <= 0 ? "" : TableFile.number(Double.parseDouble(text), 2);
    }
}
