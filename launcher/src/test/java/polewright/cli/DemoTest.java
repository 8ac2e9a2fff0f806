package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.FrameReader;
import polewright.operations.CommandRun;

/**
 * The camera demo is played once and checked from several sides; the visual demo is fast enough to play repeatedly.
 */
@Tag("slow")
class DemoTest {
    private static final String NIGHT = "2026-01-15T20:00:00Z";

    @TempDir
    private static Path home;

    private static CommandRun host;
    private static CommandRun.Outcome byFrames;

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeAll
    static void play() {
        host = new CommandRun(home, NIGHT);
        byFrames = host.good("demo", "--frames", frames().toString());
    }

    @BeforeEach
    void setUp() {
        person = new CommandRun(folder, NIGHT);
    }

    private static Path frames() {
        return home.resolve("frames");
    }

    private static List<String> events(CommandRun.Outcome demo) {
        return demo.lines().stream().filter(line -> line.startsWith("#")).toList();
    }

    private static String replayed(CommandRun by) {
        String log = by.file("data/polewright/demo.sqlite").toString();
        String file = by.file("night.jsonl").toString();
        by.good("log", "export", file, "--night", "1", "--log", log);
        return by.good("replay", file).out();
    }

    @Test
    void demo_printsSeedTruthAndLogPath() {
        Path log = host.file("data/polewright/demo.sqlite");
        assertThat(byFrames.out())
                .contains("(seed 54).")
                .contains("\nTHE TRUTH\n  at first  ")
                .contains("The night is kept in " + log);
        // A command too long for one line continues after a backslash.
        assertThat(byFrames.out().replaceAll(" \\\\\n +", " "))
                .contains("./polewright log --night 1 --log " + log)
                .contains("./polewright log export night.jsonl --night 1 --log " + log);
        assertThat(log).exists();
        assertThat(host.log()).doesNotExist();
    }

    @Test
    void namedLog_holdsTheNight() {
        String log = host.file("data/polewright/demo.sqlite").toString();
        assertThat(host.good("log", "--night", "1", "--log", log).lines())
                .filteredOn(line -> line.startsWith("#"))
                .hasSameSizeAs(events(byFrames));
    }

    @Test
    void visualDemo_replaysToTheSameReadingsAndResult() {
        CommandRun.Outcome demo = person.good("demo", "--by-eye");
        // The work is logged before advice is asked for.
        String replayed = replayed(person);
        assertThat(demo.out()).contains(replayed.substring(replayed.indexOf("#2 at ")));
        assertThat(demo.out().replaceAll("\\s+", " "))
                .containsPattern("WHY Chance of being good enough: (under )?\\d+ % now, (over )?\\d+ % after this\\.");
    }

    @Test
    void cameraDemo_replaysToTheSameEvents_andTheSameFollowedAdvice() {
        String replayed = replayed(host);
        assertThat(replayed.lines().filter(line -> line.startsWith("#")).toList())
                .isEqualTo(events(byFrames));
        List<String> blocks = List.of(replayed.split("\n\n"));
        assertThat(blocks.get(blocks.size() - 1)).contains("\n  STOP  ");
        assertThat(IntStream.range(0, blocks.size())
                        // Compass and scale are logged before advice is asked for; while the screws are turned, the
                        // frames give the orders.
                        .filter(i ->
                                i + 1 == blocks.size() || !blocks.get(i + 1).contains(": turned "))
                        .mapToObj(blocks::get))
                .filteredOn(block -> !block.contains(": begun at ")
                        && !block.contains(": work: ")
                        && !block.contains(": compass ")
                        && !block.contains(": turned "))
                .hasSizeGreaterThanOrEqualTo(4)
                .allSatisfy(block -> assertThat(byFrames.out()).contains(block.strip()));
    }

    @Test
    void sameSeed_givesTheSameReadings() {
        List<String> first = events(person.good("demo", "--by-eye", "--seed", "7"));
        assertThat(events(person.good("demo", "--by-eye", "--seed", "7")))
                .isEqualTo(first)
                .isNotEmpty();
        assertThat(events(person.good("demo", "--by-eye", "--seed", "8"))).isNotEqualTo(first);
    }

    @Test
    void sameSeed_givesTheSameFrames() {
        assertThat(untilTruthIsRevealed(person.good("demo"))).isEqualTo(untilTruthIsRevealed(byFrames));
    }

    private static String untilTruthIsRevealed(CommandRun.Outcome demo) {
        return demo.out().substring(0, demo.out().indexOf("\nTHE TRUTH\n"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"2", "3", "4", "5", "6"})
    void visualDemo_endsInAStop_orSaysThatItDidNot(String seed) {
        String out = person.good("demo", "--by-eye", "--seed", seed).out();
        String end = out.substring(out.indexOf("THE TRUTH"));
        if (out.contains("\n  STOP  ")) {
            assertThat(end).containsPattern("Within the allowance|Outside the allowance");
        } else {
            assertThat(end).contains("Not finished: after ");
        }
        assertThat(out)
                .containsPattern(
                        "SIGHT (Point the tube at the pole, swing it back and forth in right ascension|Track [A-Z])")
                .doesNotContain("FRAME");
    }

    /** The fix error is less than 3.7 times the stated uncertainty, which holds for 99.9 % of correct fixes. */
    @ParameterizedTest
    @CsvSource({"2, false", "3, false", "2, true", "3, true"})
    void cameraDemo_endsInAStopNearThePole_withAnHonestUncertainty(String seed, boolean south) {
        String out = south
                ? person.good("demo", "--seed", seed, "--south").out()
                : person.good("demo", "--seed", seed).out();
        assertThat(out)
                .contains("\n  STOP  Good enough.")
                .contains("\n  Within the allowance: good enough.\n")
                .contains(south ? "at Tussock Flat, an invented site" : "at Larkfell, an invented site")
                .contains("\n  FRAME A new frame shows the turns that remain:\n        altitude ");
        List<MatchResult> wrong = Pattern.compile(
                        "error (?:of the first three )?([\\d.]+)″; stated uncertainty" + " ([\\d.]+)″")
                .matcher(out.substring(out.indexOf("THE TRUTH")))
                .results()
                .toList();
        assertThat(wrong)
                .hasSize(2)
                .allSatisfy(error -> assertThat(Double.parseDouble(error.group(1)))
                        .isLessThan(3.7 * Double.parseDouble(error.group(2)) + 1));
        // Three frames at first, and one more to confirm after the clamps were tightened. Frames taken while turning
        // are reported separately.
        assertThat(out.lines().filter(line -> line.matches("FRAME .* UTC: \\d+ of \\d+ stars matched\\.")))
                .hasSize(4);
    }

    @Test
    void frames_canBeKeptAndReadLikeAnyOthers() throws IOException {
        List<Path> files;
        try (Stream<Path> listed = Files.list(frames())) {
            files = listed.sorted().toList();
        }
        assertThat(byFrames.out())
                .contains("The " + files.size() + " frames are in " + frames())
                .contains("./polewright attitude " + frames().resolve("frame-01.fits") + " --near pole")
                .contains("./polewright axis " + frames() + "/frame-0[123].fits --site 54.60,-2.90,240");
        assertThat(files.get(0)).hasFileName("frame-01.fits");
        Frame frame = FrameReader.read(Files.readAllBytes(files.get(0)), "frame-01.fits", DecodeOptions.DEFAULT);
        assertThat(frame.facts().middle()).contains(Instant.parse("2026-11-25T19:06:00Z"));
        assertThat(frame.facts().scalePerPixel().orElseThrow().arcseconds()).isBetween(3.0, 3.2);

        CommandRun.Outcome again = host.run("demo", "--frames", frames().toString());
        assertThat(again.status()).isEqualTo(1);
        assertThat(again.err()).isEqualTo("polewright demo: " + frames() + " is not empty. Name a new folder.\n");
    }

    @Test
    void visualDemo_hasNoFramesToKeep() {
        CommandRun.Outcome both =
                person.run("demo", "--by-eye", "--frames", person.file("frames").toString());
        assertThat(both.status()).isEqualTo(2);
        assertThat(both.complaint())
                .isEqualTo("polewright demo: --by-eye has no frames to keep. Leave out --frames or --by-eye.");
        assertThat(person.file("frames")).doesNotExist();
    }

    @Test
    void onlyPathLines_mayBeWiderThanAScreen() {
        assertThat(Stream.concat(
                        byFrames.lines().stream(), person.good("demo", "--by-eye", "--south").lines().stream()))
                .filteredOn(line -> !line.contains("demo.sqlite") && !line.contains(frames().toString()))
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void json_listsTheNightEventByEvent() {
        assertThat(person.good("demo", "--by-eye", "--json").json()).hasSizeGreaterThan(5);
        assertThat(person.good("demo", "--json").json()).hasSameSizeAs(events(byFrames));
    }
}
