package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.allowance.LimitCause;
import polewright.alignment.camera.Drive;
import polewright.alignment.fix.Fix;
import polewright.alignment.work.SkyRegion;
import polewright.launcher.Main;
import polewright.mount.pointing.PointingTerm;
import polewright.operations.CommandRun;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.planning.seasons.NightGap;
import polewright.planning.tonight.ExclusionReason;
import polewright.planning.tonight.Purpose;
import polewright.planning.tonight.RelativeDirection;
import polewright.planning.tonight.StarMove;
import polewright.report.json.PublishedSchemas;
import polewright.report.json.SchemaCoverage;
import polewright.simulation.practice.Debrief;
import polewright.simulation.practice.PracticeAction;

/** JSON output conforms to docs/schema: every command has a schema, and every schema is covered in full. */
@Tag("slow")
class JsonOutputsTest {
    private static final String LARKFELL = "54.60,-2.90,240";
    /** Events are tested in the module that writes them. */
    private static final String EVENT = "event";

    /**
     * PracticeCommandsTest plays a practice to its stop, and TurningWatchTest restarts a watch; a leaning base or a
     * hinge out of square takes a night of many turns, as in ScrewFindingTest.
     */
    private static final Set<String> LONG_NIGHTS = Set.of(
            "practice-debrief: stop_advised",
            "watch: started_afresh",
            "watch: slew_deg",
            "common: base_leans_right_deg",
            "common: base_leans_right_sigma_deg",
            "common: hinge_out_of_square_right_deg",
            "common: hinge_out_of_square_right_sigma_deg");

    @TempDir
    private Path folder;

    static Stream<String> schemas() {
        return PublishedSchemas.names().stream();
    }

    @Test
    void everyJsonCommand_hasASchema() {
        Workbench bench = new Workbench(
                Clock.systemUTC(),
                Map.of(),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL);
        Set<String> commands = new TreeSet<>();
        addJsonCommands("", Main.commands(bench), commands);
        assertThat(PublishedSchemas.commands().keySet()).containsExactlyInAnyOrderElementsOf(commands);
        assertThat(PublishedSchemas.commands().values().stream().flatMap(List::stream))
                .isSubsetOf(PublishedSchemas.names());
    }

    private static void addJsonCommands(String path, CommandLine command, Set<String> commands) {
        if (command.getCommandSpec().findOption("--json") != null) {
            commands.add(path);
        }
        command.getSubcommands().forEach((name, sub) -> addJsonCommands((path + " " + name).strip(), sub, commands));
    }

    @ParameterizedTest
    @MethodSource("schemas")
    void schema_isValidByTheMetaSchema(String name) {
        JsonNode text = PublishedSchemas.text(name);
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(SchemaLocation.of(SpecificationVersion.DRAFT_2020_12.getDialectId()))
                        .validate(text.toString(), InputFormat.JSON))
                .isEmpty();
        assertThat(text.path("title").asText()).isNotBlank();
    }

    /** At any depth. */
    @Test
    void undocumentedKey_isRefused() {
        CommandRun person = new CommandRun(folder, "2026-11-25T20:05:00Z");
        person.good("begin", "--site", LARKFELL);
        JsonNode fix = person.good("fix", "--json").json();
        assertThat(PublishedSchemas.errors("fix", fix)).isEmpty();
        for (JsonNode inside : List.of(fix, fix.get("screws"))) {
            ((ObjectNode) inside).put("strange", 1);
            assertThat(PublishedSchemas.errors("fix", fix)).hasSize(1);
            ((ObjectNode) inside).remove("strange");
        }
        ((ObjectNode) fix).remove("status");
        assertThat(PublishedSchemas.errors("fix", fix)).hasSize(1);
    }

    static Stream<Arguments> words() {
        return Stream.of(
                Arguments.of("common", "/$defs/sighting_kind", SightingKind.values()),
                Arguments.of("common", "/$defs/screw", ScrewTurn.Which.values()),
                Arguments.of("common", "/$defs/axis_from_frames/properties/drive", Drive.values()),
                Arguments.of("allow", "/properties/edges/items/properties/cause", LimitCause.values()),
                Arguments.of("pointing", "/properties/terms/items/properties/term", PointingTerm.values()),
                Arguments.of("stars", "/properties/hurdles/propertyNames", ExclusionReason.values()),
                Arguments.of(
                        "stars",
                        "/properties/stars/items/properties/guides/items/properties/side",
                        RelativeDirection.values()),
                Arguments.of(
                        "stars", "/properties/stars/items/properties/move/properties/order", StarMove.Order.values()),
                Arguments.of("tonight", "/properties/for", Purpose.values()),
                Arguments.of("practice-action", "/properties/kind", PracticeAction.Kind.values()),
                Arguments.of(
                        "practice-debrief", "/properties/not_needed/items/properties/reason", Debrief.Reason.values()));
    }

    @ParameterizedTest
    @MethodSource("words")
    void schema_listsAllEnumWords(String name, String pointer, Enum<?>[] values) {
        assertThat(PublishedSchemas.text(name).at(pointer).get("enum"))
                .extracting(JsonNode::asText)
                .containsExactlyInAnyOrder(Stream.of(values)
                        .map(value -> value.name().toLowerCase(Locale.ROOT))
                        .toArray(String[]::new));
    }

    @Test
    void schema_hasEveryKindOfAdviceAndFix() {
        assertThat(PublishedSchemas.text("common").at("/$defs/advice_keys/oneOf"))
                .hasSameSizeAs(Advice.class.getPermittedSubclasses());
        assertThat(PublishedSchemas.text("fix").at("/properties/status/enum"))
                .hasSameSizeAs(Fix.class.getPermittedSubclasses());
        assertThat(PublishedSchemas.text("log-seasons").at("/$defs/between/oneOf"))
                .hasSameSizeAs(NightGap.class.getPermittedSubclasses());
        assertThat(PublishedSchemas.text("common").at("/$defs/region/oneOf"))
                .hasSameSizeAs(SkyRegion.class.getPermittedSubclasses());
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-11-25T20:05:00+11:00", "2026-11-25T20:05:00", "20:05"})
    void instants_areUtc(String at) throws IOException {
        JsonNode nights = new ObjectMapper()
                .readTree("[{\"night\":1,\"begun_at\":\"" + at + "\",\"site_name\":\"Larkfell\",\"events\":1}]");
        assertThat(PublishedSchemas.errors("log-nights", nights)).isNotEmpty();
    }

    @Test
    void everySchema_isCovered_withAllKeysAndOutcomes() throws IOException {
        SchemaCoverage coverage = new SchemaCoverage();
        PrintedOutputs.all(folder, coverage);
        List<String> missing = new ArrayList<>();
        schemas().filter(name -> !name.equals(EVENT)).forEach(name -> missing.addAll(coverage.missing(name)));
        assertThat(missing).containsExactlyInAnyOrderElementsOf(LONG_NIGHTS);
    }
}
