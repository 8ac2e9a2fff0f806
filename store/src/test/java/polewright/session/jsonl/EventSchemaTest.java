package polewright.session.jsonl;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.session.RandomEvents;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.fields.BodyNames;
import polewright.sky.place.CatalogueStar;

/** docs/schema/event.schema.json describes the lines that Polewright writes and reads. */
@Tag("slow")
class EventSchemaTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Path DOCS = Path.of("..", "docs").toAbsolutePath().normalize();
    private static final Path FILE = DOCS.resolve("schema").resolve("event.schema.json");
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(
                    SpecificationVersion.DRAFT_2020_12,
                    // Otherwise it finds files on the class path only.
                    registry -> registry.schemaLoader(loader -> loader.fetchRemoteResources()))
            .getSchema(SchemaLocation.of(FILE.toUri().toString()));
    private static final BodyNames ANY_NAME =
            name -> Optional.of(new FixedStar(name, CatalogueStar.fixed(Angle.ofDegrees(37.95), Angle.ofDegrees(80))));
    private static final int RANDOM_EVENTS = 100;

    private static List<Error> errors(JsonNode event) {
        return SCHEMA.validate(
                event, execution -> execution.executionConfig(config -> config.formatAssertionsEnabled(true)));
    }

    private static JsonNode parsed(String line) {
        try {
            return MAPPER.readTree(line);
        } catch (JsonProcessingException e) {
            throw new AssertionError(line, e);
        }
    }

    private static String written(EventKind kind, int seed) {
        return JsonLines.write(
                new LoggedEvent(30, Instant.parse("2026-01-15T18:00:00Z"), new RandomEvents(seed).event(kind, 30)));
    }

    /** The examples of docs/events.md. */
    static List<String> examples() throws IOException {
        List<String> lines = new ArrayList<>();
        Matcher block =
                Pattern.compile("(?ms)^```jsonl?\\n(.*?)^```$").matcher(Files.readString(DOCS.resolve("events.md")));
        while (block.find()) {
            block.group(1).lines().forEach(lines::add);
        }
        return lines;
    }

    @Test
    void schemaListsEveryKind() throws IOException {
        JsonNode kinds = MAPPER.readTree(FILE.toFile()).at("/properties/event/enum");
        assertThat(kinds)
                .extracting(JsonNode::asText)
                .containsExactly(
                        Stream.of(EventKind.values()).map(EventKind::word).toArray(String[]::new));
    }

    @ParameterizedTest
    @EnumSource(EventKind.class)
    void writtenEvents_conformToTheSchema(EventKind kind) {
        for (int seed = 0; seed < RANDOM_EVENTS; seed++) {
            String line = written(kind, seed);
            assertThat(errors(parsed(line))).as(line).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("examples")
    void documentedExamples_conformToTheSchema(String line) {
        assertThat(errors(parsed(line))).as(line).isEmpty();
    }

    /** A missing key or an unknown key is refused by both or by neither. */
    @ParameterizedTest
    @MethodSource("examples")
    void schemaRequiresTheSameKeysAsTheReader(String line) {
        JsonNode whole = parsed(line);
        for (String pointer : objects(whole, "")) {
            assertSame(changed(whole, pointer, object -> object.put("strange", 1)));
            whole.at(pointer)
                    .fieldNames()
                    .forEachRemaining(key -> assertSame(changed(whole, pointer, object -> object.remove(key))));
        }
    }

    private static void assertSame(JsonNode event) {
        boolean isByTheSchema = errors(event).isEmpty();
        try {
            JsonLines.readLine(event.toString(), 30, ANY_NAME);
            assertThat(errors(event)).as("read: %s", event).isEmpty();
        } catch (InputRefused refused) {
            String why = String.valueOf(refused.getMessage());
            // Which keys may be absent together depends on their values, which only the reader checks.
            boolean isOfValues = why.contains("does not give it") || why.contains("no screw was turned");
            assertThat(isByTheSchema).as("%s: %s", why, event).isEqualTo(isOfValues);
        }
    }

    private interface Change {
        void on(ObjectNode object);
    }

    private static JsonNode changed(JsonNode whole, String pointer, Change change) {
        JsonNode copy = whole.deepCopy();
        change.on((ObjectNode) copy.at(pointer));
        return copy;
    }

    /** The pointers to all objects in a value. */
    private static List<String> objects(JsonNode value, String pointer) {
        List<String> found = new ArrayList<>();
        if (value.isObject()) {
            found.add(pointer);
        }
        if (value.isObject()) {
            value.properties()
                    .forEach(field -> found.addAll(objects(field.getValue(), pointer + "/" + field.getKey())));
        } else {
            for (int i = 0; i < value.size(); i++) {
                found.addAll(objects(value.get(i), pointer + "/" + i));
            }
        }
        return found;
    }

    @Test
    void everyKeyOfTheSchemaIsWritten() throws IOException {
        Set<String> listed = new TreeSet<>();
        MAPPER.readTree(FILE.toFile())
                .findValues("properties")
                .forEach(properties -> properties.fieldNames().forEachRemaining(listed::add));
        Set<String> seen = new HashSet<>();
        for (EventKind kind : EventKind.values()) {
            for (int seed = 0; seed < RANDOM_EVENTS; seed++) {
                addKeys(parsed(written(kind, seed)), seen);
            }
        }
        listed.removeAll(seen);
        assertThat(listed).isEmpty();
    }

    private static void addKeys(JsonNode value, Set<String> keys) {
        value.fieldNames().forEachRemaining(keys::add);
        value.forEach(inner -> addKeys(inner, keys));
    }
}
