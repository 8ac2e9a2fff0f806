package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.launcher.Main;
import polewright.operations.CommandRun;
import polewright.operations.Workbench;
import polewright.operations.camera.CameraEvening;
import polewright.operations.watch.SettableClock;
import polewright.report.json.PublishedSchemas;

/** A capture program saves frames while someone turns right ascension, then the screws. */
@Tag("slow")
class WatchCommandTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    private static Path frames;

    private static double eastAfterScrews;
    private static double upAfterScrews;

    @TempDir
    private Path folder;

    private Path captures;
    private CommandRun person;
    private final SettableClock clock = new SettableClock(Instant.parse("2026-11-25T20:10:00Z"));
    private final Deque<Runnable> meanwhile = new ArrayDeque<>();

    @BeforeAll
    static void takeFrames() {
        CameraEvening evening = CameraEvening.atLarkfell();
        evening.takeTurning(frames, 3, 30);
        evening.turnScrews(-2, 0.5);
        evening.take(frames.resolve("screw1.fits"));
        evening.turnScrews(-1.25, 0.25);
        evening.take(frames.resolve("screw2.fits"));
        eastAfterScrews = evening.trueOffset().east().arcminutes();
        upAfterScrews = evening.trueOffset().up().arcminutes();
        evening.take(frames.resolve("still.fits"));
    }

    @BeforeEach
    void begin() throws IOException {
        captures = Files.createDirectory(folder.resolve("captures"));
        person = new CommandRun(folder, "2026-11-25T20:10:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell", "--at", "2026-11-25T19:30Z");
    }

    /** Saved when the watch next pauses, and left unchanged for two more polls. */
    private void save(String... names) {
        for (String name : names) {
            meanwhile.add(() -> copy(frames.resolve(name), captures.resolve(name)));
            meanwhile.add(() -> {});
            meanwhile.add(() -> {});
        }
    }

    private static void copy(Path from, Path to) {
        try {
            Files.copy(from, to);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private CommandRun.Outcome watch(boolean terminal, String... more) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Workbench bench = new Workbench(
                clock,
                Map.of("POLEWRIGHT_LOG", person.log().toString()),
                new PrintWriter(out),
                new PrintWriter(err),
                terminal,
                length -> {
                    clock.advance(length);
                    Runnable next = meanwhile.poll();
                    if (next != null) {
                        next.run();
                    }
                });
        List<String> typed = new ArrayList<>(
                List.of("watch", captures.toString(), "--near", "pole", "--within", "25", "--until-idle", "3"));
        typed.addAll(List.of(more));
        int status = Main.run(bench, typed.toArray(String[]::new));
        if (status == 0 && typed.contains("--json")) {
            PublishedSchemas.check(typed, out.toString());
        }
        return new CommandRun.Outcome(status, out.toString(), err.toString());
    }

    private static List<JsonNode> values(CommandRun.Outcome outcome) {
        return outcome.lines().stream().map(WatchCommandTest::value).toList();
    }

    private static JsonNode value(String line) {
        try {
            return MAPPER.readTree(line);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private JsonNode fix() {
        return person.good("fix", "--json").json();
    }

    @Test
    void frames_areCollectedUntilTheyGiveTheAxis_whichIsLogged() {
        save("turn1.fits", "turn2.fits");
        CommandRun.Outcome result = watch(false);
        assertThat(result.status()).isZero();
        assertThat(result.out().replaceAll("\\s+", " "))
                .startsWith("Watching " + captures + ". Stop with Ctrl-C. turn1.fits, 20:00:00 UTC: ")
                .contains("Turn right ascension by 30 to 90 degrees, and nothing else. Then take another frame."
                        + " turn2.fits,")
                .contains("Axis by these frames alone: 4")
                .contains("NOTE two frames always fit some axis")
                .contains("Logged #2: camera frames. Axis: 42′ east, 17′ low")
                .contains("TURN altitude screw 1/2 turn clockwise, looking at its head (a test turn)")
                .endsWith("The watch has ended. ");
        assertThat(person.events()).isEqualTo(2);
        assertThat(fix().get("east_arcmin").doubleValue()).isCloseTo(42, within(0.3));
    }

    @Test
    void thirdPosition_replacesTheFirstSighting() {
        save("turn1.fits", "turn2.fits", "turn3.fits");
        List<JsonNode> result = values(watch(false, "--json"));
        assertThat(result.stream().filter(v -> v.has("axis"))).hasSize(2);
        // Begin, two frames, undo, three frames.
        assertThat(person.events()).isEqualTo(4);
        assertThat(person.good("log").out()).contains("3 camera frames, right ascension turned 60.3°");
    }

    @Test
    void onceTheAxisIsKnown_eachFrameGivesMovementAndRemainder() {
        save("turn1.fits", "turn2.fits", "turn3.fits", "screw1.fits", "screw2.fits");
        List<JsonNode> result = values(watch(false, "--json"));
        List<JsonNode> screws = result.stream()
                .filter(v -> v.has("screws"))
                .map(v -> v.get("screws"))
                .toList();
        assertThat(screws).hasSize(2);
        JsonNode last = screws.get(1);
        assertThat(last.get("east_arcmin").doubleValue()).isCloseTo(eastAfterScrews, within(0.2));
        assertThat(last.get("up_arcmin").doubleValue()).isCloseTo(upAfterScrews, within(0.2));
        assertThat(last.get("azimuth_moved_arcmin").doubleValue()).isLessThan(-30);
        assertThat(Math.abs(last.get("azimuth_turns_remaining_clockwise").doubleValue()))
                .isLessThan(Math.abs(
                        screws.get(0).get("azimuth_turns_remaining_clockwise").doubleValue()));
        assertThat(last.get("warnings")).isEmpty();
        // The axis was moved; its new position is in the log, with the turns that led there.
        assertThat(fix().get("east_arcmin").doubleValue()).isCloseTo(eastAfterScrews, within(0.3));
        assertThat(person.good("log").out())
                .contains("measured by camera frames")
                .contains("and one more")
                .doesNotContain("knocked");
    }

    @Test
    void turning_continuesFromLoggedFrames() {
        person.good(
                "sight",
                "frames",
                frames.resolve("turn1.fits").toString(),
                frames.resolve("turn2.fits").toString(),
                frames.resolve("turn3.fits").toString(),
                "--near",
                "pole",
                "--within",
                "25");
        save("screw1.fits");
        CommandRun.Outcome result = watch(false, "--turning");
        assertThat(result.lines())
                .filteredOn(line -> line.startsWith("20:01:30 UTC"))
                .singleElement()
                .asString()
                .matches("20:01:30 UTC  moved \\d+′ west, \\d+′ up \\(sky\\)\\. Turn alt 0\\.\\d\\d c?cw, az"
                        + " \\d\\.\\d\\d ccw");
        assertThat(result.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    private void sightTurns(int count) {
        List<String> typed = new ArrayList<>(List.of("sight", "frames", "--near", "pole", "--within", "25"));
        for (int i = 1; i <= count; i++) {
            typed.add(frames.resolve("turn" + i + ".fits").toString());
        }
        person.good(typed.toArray(String[]::new));
    }

    @Test
    void loggedTurns_areNotMistakenForABump() {
        sightTurns(3);
        person.good("turn", "--azimuth", "2 ccw", "--altitude", "1/2 cw");
        save("screw1.fits");
        assertThat(watch(false, "--turning").out()).doesNotContain("moved by its screws");
        assertThat(person.good("log").out()).contains("and one more").doesNotContain("knocked");
    }

    @Test
    void unloggedTurns_areLoggedAsMeasuredByFrames() {
        sightTurns(3);
        save("screw1.fits");
        assertThat(watch(false, "--turning").out().replaceAll("\\s+", " "))
                .containsPattern("Logged #3: turned altitude about 0\\.\\d clockwise, azimuth about [12]\\.\\d"
                        + " counter-clockwise, measured by camera frames\\. Logged #4: camera frames\\."
                        + " 20:01:30 UTC moved .* Turn alt ");
    }

    @Test
    void betterPosition_replacesTheLoggedSighting() {
        sightTurns(2);
        save("turn3.fits");
        watch(false, "--turning");
        // Begin, two frames, three frames, undo of the two.
        assertThat(person.events()).isEqualTo(4);
        assertThat(person.good("log").out()).contains("3 camera frames, right ascension turned 60.3°");
    }

    @Test
    void driveState_isPassedOn() {
        save("turn1.fits", "turn2.fits");
        assertThat(values(watch(false, "--json", "--drive", "standing")).stream()
                        .filter(v -> v.has("axis"))
                        .map(v -> v.get("axis").get("drive").textValue()))
                .containsExactly("standing");
    }

    @Test
    void loggingFailure_isReported_andTheWatchContinues() {
        save("turn1.fits");
        meanwhile.add(() -> {
            try {
                Files.delete(person.log());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        save("turn2.fits", "screw1.fits");
        CommandRun.Outcome result = watch(false);
        assertThat(result.status()).isZero();
        assertThat(result.out()).contains("\nNot logged: ").contains("20:01:30 UTC  moved ");
    }

    @Test
    void onATerminal_statusLineIsOverwritten() {
        save("turn1.fits", "turn2.fits", "turn3.fits", "screw1.fits", "screw2.fits", "still.fits");
        assertThat(watch(true).out())
                .containsPattern(
                        "\r\u001b\\[2K20:02:00 UTC  moved [^\n]*\r\u001b\\[2K20:02:30 UTC  moved [^\n]*\nThe watch");
    }

    @Test
    void turning_needsLoggedFrames() {
        CommandRun.Outcome result = watch(false, "--turning");
        assertThat(result.status()).isEqualTo(1);
        assertThat(result.err())
                .isEqualTo("polewright watch: no frames have given the axis tonight. Watch without --turning first, or"
                        + " use polewright sight frames.\n");
    }

    @Test
    void unsolvedFrame_isReportedInOneLine_andTheWatchContinues() {
        meanwhile.add(() -> CameraEvening.write(captures.resolve("junk.fits"), new byte[] {1, 2, 3}));
        meanwhile.add(() -> {});
        meanwhile.add(() -> {});
        save("turn1.fits");
        meanwhile.add(() -> copy(frames.resolve("turn1.fits"), captures.resolve("again.fits")));
        meanwhile.add(() -> {});
        meanwhile.add(() -> {});
        CommandRun.Outcome result = watch(false);
        assertThat(result.status()).isZero();
        assertThat(result.out())
                .contains("\njunk.fits is not a supported image.\n")
                .contains("\nagain.fits is the same frame as an earlier file.\n")
                .contains("turn1.fits, 20:00:00 UTC: ");
        assertThat(person.events()).isEqualTo(1);
    }

    @Test
    void frameCount_endsTheWatch() {
        save("turn1.fits", "turn2.fits");
        CommandRun.Outcome result = watch(false, "--count", "1");
        assertThat(result.out()).contains("turn1.fits").doesNotContain("turn2.fits");
    }

    @Test
    void timeout_endsTheWatch() {
        Instant began = clock.instant();
        assertThat(watch(false).status()).isZero();
        assertThat(Duration.between(began, clock.instant())).isBetween(Duration.ofSeconds(3), Duration.ofSeconds(4));
    }
}
