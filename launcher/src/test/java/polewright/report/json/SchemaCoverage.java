package polewright.report.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Records which keys of the schemas, and which words for kinds of outcome, have been printed. */
public final class SchemaCoverage {
    /** Keys whose values are kinds of outcome; every kind must occur. */
    private static final Set<String> OUTCOMES = Set.of("status", "do", "shape", "for", "drive", "toward");

    private static final String ALL = "common";

    private final Map<String, Set<String>> seen = new TreeMap<>();

    public void add(List<PublishedSchemas.Checked> printed) {
        for (PublishedSchemas.Checked one : printed) {
            addAll(one.value(), seen.computeIfAbsent(one.schema(), s -> new HashSet<>()));
            addAll(one.value(), seen.computeIfAbsent(ALL, s -> new HashSet<>()));
        }
    }

    private static void addAll(JsonNode value, Set<String> words) {
        value.properties().forEach(field -> {
            words.add(field.getKey());
            if (field.getValue().isTextual()) {
                words.add(field.getKey() + " " + field.getValue().asText());
            }
        });
        value.forEach(inner -> addAll(inner, words));
    }

    /** What a schema lists but no output contained; the schema's own name if it was never printed. */
    public List<String> missing(String schema) {
        if (!seen.containsKey(schema)) {
            return List.of(schema);
        }
        Set<String> listed = new TreeSet<>();
        for (JsonNode properties : PublishedSchemas.text(schema).findValues("properties")) {
            properties.properties().forEach(property -> {
                listed.add(property.getKey());
                if (OUTCOMES.contains(property.getKey())) {
                    words(property.getValue()).forEach(word -> listed.add(property.getKey() + " " + word));
                }
            });
        }
        listed.removeAll(seen.getOrDefault(schema, Set.of()));
        return listed.stream().map(word -> schema + ": " + word).toList();
    }

    private static List<String> words(JsonNode schema) {
        List<String> words = new ArrayList<>();
        schema.path("enum").forEach(word -> words.add(word.asText()));
        if (schema.path("const").isTextual()) {
            words.add(schema.path("const").asText());
        }
        return words;
    }
}
