package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.operations.camera.CameraEvening;

/** Camera frames as sightings. */
@Tag("slow")
class SightFramesTest {
    @TempDir
    private static Path frames;

    private static List<Path> turned;
    private static List<Path> tracked;

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeAll
    static void takeFrames() {
        CameraEvening evening = CameraEvening.atLarkfell();
        turned = evening.takeTurning(frames, 3, 30);
        // On the meridian, the axis's offset east shows in full.
        evening.pointAt(0, 55);
        tracked = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            tracked.add(evening.take(frames.resolve("drift" + i + ".fits")));
            evening.waitSeconds(90);
        }
    }

    @BeforeEach
    void begin() {
        person = new CommandRun(folder, "2026-11-25T20:05:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell", "--at", "2026-11-25T19:30Z");
    }

    private CommandRun.Outcome sight(String kind, List<Path> files, String... more) {
        List<String> typed = new ArrayList<>(List.of("sight", kind));
        files.forEach(file -> typed.add(file.toString()));
        typed.addAll(List.of(more));
        return person.good(typed.toArray(String[]::new));
    }

    @Test
    void frames_giveTheAxisAndTheTurns() {
        CommandRun.Outcome result = sight("frames", turned, "--near", "pole", "--within", "25");
        assertThat(result.out().replaceAll("\\s+", " "))
                .startsWith("1. turn1.fits, 20:00:00 UTC: ")
                .contains("Axis by these frames alone: 4")
                .contains("Logged #2: camera frames. Axis: 42′ east, 17′ low (±0.1′)."
                        + " TURN altitude screw 1/2 turn clockwise, looking at its head (a test"
                        + " turn).");
        assertThat(result.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        JsonNode fix = person.good("fix", "--json").json();
        assertThat(fix.get("status").textValue()).isEqualTo("solved");
        assertThat(fix.get("east_arcmin").doubleValue()).isCloseTo(42, within(0.2));
        assertThat(fix.get("up_arcmin").doubleValue()).isCloseTo(-17, within(0.2));
        assertThat(person.good("log").out()).contains("3 camera frames, right ascension turned 60.3°");
    }

    @Test
    void json_hasTheFrameSolutionAndTheNight() {
        JsonNode result = sight("frames", turned, "--near", "pole", "--within", "25", "--json")
                .json();
        assertThat(result.get("seq").intValue()).isEqualTo(2);
        assertThat(result.get("advice").get("do").textValue()).isEqualTo("turn");
        assertThat(result.get("found").get("rotation_deg")).hasSize(2);
        assertThat(result.get("notes")).isEmpty();
    }

    @Test
    void twoFrames_areLogged_withANoteThatTheyAreUnchecked() {
        CommandRun.Outcome result = sight("frames", turned.subList(0, 2), "--near", "pole", "--within", "25");
        assertThat(result.out().replaceAll("\\s+", " "))
                .containsOnlyOnce("NOTE two frames always fit some axis, so nothing checks them");
        assertThat(person.events()).isEqualTo(2);
    }

    /** Saved three seconds after each exposure by a computer with a correct clock, two hours behind the headers. */
    @Test
    void localTimeInHeaders_isQuestionedBeforeUse() throws IOException {
        for (int i = 0; i < turned.size(); i++) {
            Instant trueTime = CameraEvening.EVENING.plusSeconds(5 + 30L * i).minusSeconds(7200);
            Files.setLastModifiedTime(turned.get(i), FileTime.from(trueTime));
        }
        List<String> typed = new ArrayList<>(List.of("sight", "frames", "--near", "pole", "--within", "25"));
        turned.forEach(file -> typed.add(file.toString()));
        CommandRun.Outcome question = person.run(typed.toArray(String[]::new));
        assertThat(question.status()).isEqualTo(1);
        assertThat(question.complaint())
                .contains("the times in these frames are 2 hours ahead of the times their files were written")
                .contains("--zone +02:00")
                .contains("--zone Z");
        assertThat(person.events()).isEqualTo(1);
        typed.addAll(List.of("--zone", "Z"));
        person.good(typed.toArray(String[]::new));
        assertThat(person.events()).isEqualTo(2);
        for (Path file : turned) {
            Files.setLastModifiedTime(file, FileTime.from(CameraEvening.EVENING.minusSeconds(1_000_000)));
        }
    }

    /** At 14:00 UTC in November the Sun is about 10° above the horizon at Larkfell. */
    @Test
    void starsByDay_areRefused_untilTheTimeZoneIsGiven() throws IOException {
        List<String> typed = new ArrayList<>(List.of("sight", "frames", "--near", "pole", "--within", "25"));
        for (Path file : turned) {
            String content = Files.readString(file, StandardCharsets.ISO_8859_1)
                    .replace("2026-11-25T20:", "2026-11-25T14:")
                    .replace("2026-11-25T19:", "2026-11-25T13:");
            Path byDay = folder.resolve(file.getFileName());
            Files.writeString(byDay, content, StandardCharsets.ISO_8859_1);
            Files.setLastModifiedTime(byDay, FileTime.from(CameraEvening.EVENING.minusSeconds(1_000_000)));
            typed.add(byDay.toString());
        }
        CommandRun.Outcome question = person.run(typed.toArray(String[]::new));
        assertThat(question.complaint())
                .contains("turn1.fits: it shows stars, but at its time (14:00:00 UTC) the Sun was at 10°")
                .contains("--zone Z");
        assertThat(person.events()).isEqualTo(1);
        typed.addAll(List.of("--zone", "-06:00"));
        person.good(typed.toArray(String[]::new));
        assertThat(person.events()).isEqualTo(2);
    }

    @Test
    void driftOfATrackedField_isLogged() {
        person.waitMinutes(20);
        String result = sight("drift-frames", tracked).out().replaceAll("\\s+", " ");
        assertThat(result)
                .contains("Declination drifts ")
                .contains("Right ascension drifts ")
                .contains("Periodic error in right ascension, scaled to the equator: ")
                .contains("Logged #2: drift of a field.");
        // On the meridian, 1′ east moves stars south by 0.2625″ a minute (docs/formulas.md): 42′ moves them by 11.0″.
        JsonNode logged = person.good("undo", "--json").json();
        assertThat(logged.get("seq").intValue()).isEqualTo(3);
        JsonNode json = sight("drift-frames", tracked, "--json").json();
        assertThat(json.get("found").get("north_arcsec_min").doubleValue()).isCloseTo(-11.0, within(0.5));
        assertThat(json.get("found").has("periodic_error")).isTrue();
    }

    @Test
    void unusableFrames_areRefused_andTheNightIsUnchanged() {
        CommandRun.Outcome same = person.run(
                "sight",
                "frames",
                turned.get(0).toString(),
                turned.get(0).toString(),
                "--near",
                "pole",
                "--within",
                "25");
        assertThat(same.status()).isEqualTo(1);
        assertThat(same.err())
                .isEqualTo("polewright sight frames: " + turned.get(0) + " is named twice. Name each frame once.\n");
        assertThat(person.events()).isEqualTo(1);
    }

    @Test
    void loggedFrames_areNotCountedTwice_unlessUndone() {
        sight("frames", turned.subList(0, 2), "--near", "pole", "--within", "25");
        List<String> again = new ArrayList<>(List.of("sight", "frames", "--near", "pole", "--within", "25"));
        turned.forEach(file -> again.add(file.toString()));
        CommandRun.Outcome refused = person.run(again.toArray(String[]::new));
        assertThat(refused.status()).isEqualTo(1);
        assertThat(refused.err())
                .isEqualTo("polewright sight frames: these frames are already in the log as #2. Take new ones, or first"
                        + " remove that with polewright undo 2.\n");
        assertThat(person.events()).isEqualTo(2);
        person.good("undo", "2");
        person.good(again.toArray(String[]::new));
    }
}
