package polewright.report.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The schemas under {@code docs/schema}, and the commands that print them. */
public final class PublishedSchemas {
    private static final Path FOLDER =
            Path.of("..", "docs", "schema").toAbsolutePath().normalize();
    private static final String ENDING = ".schema.json";
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final SchemaRegistry REGISTRY = SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_2020_12,
            // Otherwise it looks for files on the class path only.
            registry -> registry.schemaLoader(loader -> loader.fetchRemoteResources()));
    private static final Map<String, List<String>> COMMANDS = readCommands();
    private static final Map<String, Schema> COMPILED = new LinkedHashMap<>();

    private PublishedSchemas() {}

    /** Each command with the schemas of its output, from the table in the folder's README. */
    public static Map<String, List<String>> commands() {
        return COMMANDS;
    }

    /** The names of all schemas. */
    public static Set<String> names() {
        try (var files = Files.list(FOLDER)) {
            return new TreeSet<>(files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(ENDING))
                    .map(name -> name.substring(0, name.length() - ENDING.length()))
                    .toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static JsonNode text(String name) {
        return parsed(read(FOLDER.resolve(name + ENDING))).get(0);
    }

    /** The violations of one schema by a value; empty if it conforms. */
    public static synchronized List<Error> errors(String name, JsonNode value) {
        Schema schema = COMPILED.computeIfAbsent(
                name,
                n -> REGISTRY.getSchema(
                        SchemaLocation.of(FOLDER.resolve(n + ENDING).toUri().toString())));
        return schema.validate(
                value, execution -> execution.executionConfig(config -> config.formatAssertionsEnabled(true)));
    }

    /**
     * Fails unless a command's output conforms to one of the command's schemas.
     *
     * @param typed the command line
     * @return each printed value with the name of its schema
     */
    public static List<Checked> check(List<String> typed, String output) {
        List<String> names = ofTyped(typed);
        List<JsonNode> values = parsed(output);
        if (!names.equals(List.of("watch"))) {
            assertThat(values).as("%s prints one value", typed).hasSize(1);
        }
        return values.stream().map(value -> check(typed, names, value)).toList();
    }

    /** A value and the schema that it conforms to. */
    public record Checked(String schema, JsonNode value) {}

    private static Checked check(List<String> typed, List<String> names, JsonNode value) {
        List<String> wrong = new ArrayList<>();
        for (String name : names) {
            List<Error> errors = errors(name, value);
            if (errors.isEmpty()) {
                return new Checked(name, value);
            }
            errors.forEach(error -> wrong.add(name + ": " + error));
        }
        throw new AssertionError(String.join(" ", typed) + " breaks its schema:\n" + String.join("\n", wrong) + "\n"
                + value.toPrettyString());
    }

    /** A practice command runs another command; a command's name has at most three words. */
    private static List<String> ofTyped(List<String> typed) {
        List<String> words = typed.size() > 3 && typed.subList(0, 3).equals(List.of("practice", "do", "--"))
                ? typed.subList(3, typed.size())
                : typed;
        for (int count = Math.min(3, words.size()); count > 0; count--) {
            List<String> names = COMMANDS.get(String.join(" ", words.subList(0, count)));
            if (names != null) {
                return names;
            }
        }
        throw new AssertionError("docs/schema/README.md has no schema for " + String.join(" ", typed));
    }

    private static Map<String, List<String>> readCommands() {
        Map<String, List<String>> commands = new TreeMap<>();
        Matcher row = Pattern.compile("(?m)^\\| (`.*) \\| \\[.*]\\((.*)\\.schema\\.json\\) \\|$")
                .matcher(read(FOLDER.resolve("README.md")));
        while (row.find()) {
            String name = row.group(2);
            Arrays.stream(row.group(1).split("`"))
                    .filter(word -> word.matches("[a-z].*"))
                    .forEach(command -> commands.computeIfAbsent(command, c -> new ArrayList<>())
                            .add(name));
        }
        return commands;
    }

    private static List<JsonNode> parsed(String text) {
        List<JsonNode> values = new ArrayList<>();
        try (JsonParser parser = MAPPER.createParser(text)) {
            for (JsonNode value = MAPPER.readTree(parser); value != null; value = MAPPER.readTree(parser)) {
                values.add(value);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("no JSON: " + text, e);
        }
        return values;
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
