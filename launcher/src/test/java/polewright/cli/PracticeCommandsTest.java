package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.operations.CommandRun;

/** A practice night played through its commands by someone who follows the advice. */
@Tag("slow")
class PracticeCommandsTest {
    private static final int MOST_STEPS = 60;

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void setUp() {
        person = new CommandRun(folder, "2026-06-21T11:00:00Z");
    }

    private JsonNode practice(String... typed) {
        List<String> words = new ArrayList<>(List.of("practice"));
        words.addAll(List.of(typed));
        words.add("--json");
        return person.good(words.toArray(String[]::new)).json();
    }

    private JsonNode ordinary(String... typed) {
        List<String> words = new ArrayList<>(List.of("practice", "do", "--"));
        words.addAll(List.of(typed));
        words.add("--json");
        return person.good(words.toArray(String[]::new)).json();
    }

    private Path actionFile() {
        return person.file("data/polewright/practice/1/deeds.jsonl");
    }

    /** Follows the advice until it says stop; returns the number of steps. */
    private int playToStop() {
        for (int step = 0; step < MOST_STEPS; step++) {
            JsonNode advice = ordinary("next");
            String what = advice.get("do").asText();
            if (what.equals("stop")) {
                return step;
            }
            follow(what, advice);
        }
        throw new AssertionError("no stop after " + MOST_STEPS + " steps");
    }

    private void follow(String what, JsonNode advice) {
        switch (what) {
            case "turn" -> turn(advice);
            case "clamp" -> {
                practice("clamp");
                ordinary("clamp");
            }
            case "move" -> {
                practice(
                        "move",
                        "--right=" + advice.path("azimuth_right_deg").asDouble(),
                        "--up=" + advice.path("altitude_up_deg").asDouble());
                ordinary("knock");
            }
            default -> sight(advice);
        }
    }

    private static String turns(double clockwise) {
        return Math.abs(clockwise) + (clockwise < 0 ? " ccw" : " cw");
    }

    private void turn(JsonNode advice) {
        if (advice.path("loosen_first").asBoolean()) {
            practice("unclamp");
            ordinary("unclamp");
        }
        for (JsonNode ordered : advice.get("order")) {
            String screw = ordered.asText();
            double net = advice.get(screw + "_turns_clockwise").asDouble();
            double back = advice.path(screw + "_back_turns_clockwise").asDouble();
            String typed = back == 0 ? turns(net) : turns(net - back) + " then " + turns(back);
            practice("screw", screw, typed);
            ordinary("turn", "--" + screw + "=" + typed);
        }
    }

    private void sight(JsonNode advice) {
        String kind = advice.get("sighting").asText();
        switch (kind) {
            case "compass" ->
                ordinary(
                        "sight",
                        "compass",
                        practice("look", "compass").at("/seen/bearing_deg").asText());
            case "level_and_scale" ->
                ordinary(
                        "sight",
                        "scale",
                        practice("look", "scale").at("/seen/altitude_deg").asText());
            case "still_point" -> {
                JsonNode seen = practice("look", "rocking").get("seen");
                ordinary(
                        "sight",
                        "still",
                        seen.get("star").asText(),
                        "--distance",
                        seen.get("distance_fields").asText(),
                        "--toward",
                        seen.get("toward_clock").asText(),
                        "--with",
                        seen.get("optic").asText());
            }
            case "frames" -> {
                List<String> typed = new ArrayList<>(List.of("sight", "frames"));
                for (String turned : new String[] {"--turned=-30", "--turned=0", "--turned=30"}) {
                    typed.add(practice("frame", turned).at("/seen/file").asText());
                }
                ordinary(typed.toArray(String[]::new));
            }
            default -> {
                JsonNode seen = practice(
                                "look",
                                "drift",
                                advice.at("/star/name").asText(),
                                "--minutes",
                                advice.get("watch_minutes").asText())
                        .get("seen");
                ordinary(
                        "sight",
                        "drift",
                        seen.get("star").asText(),
                        "--minutes",
                        seen.get("minutes").asText(),
                        "--moved",
                        seen.get("moved").asText(),
                        "--toward",
                        seen.get("toward").asText(),
                        "--with",
                        seen.get("optic").asText());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"--camera=false", "--camera=true"})
    void followingTheAdvice_endsInAStopWithinTheAllowance(String camera) {
        practice("begin", camera);
        assertThat(playToStop()).isGreaterThan(3);

        JsonNode debrief = practice("debrief");
        assertThat(debrief.get("within").asBoolean()).isTrue();
        assertThat(debrief.has("stop_advised")).isTrue();
        long sum = 0;
        for (JsonNode took : debrief.get("by_kind_s")) {
            sum += took.asLong();
        }
        assertThat(sum).isEqualTo(debrief.get("total_s").asLong()).isPositive();
        assertThat(person.good("practice", "debrief").out())
                .contains("THE TRUTH", "Within the allowance.", "Someone following the advice stops after ");
    }

    @Test
    void observations_canBeLoggedLater_butNotAfterTheNextOfTheirKind() {
        practice("begin");
        practice("look", "compass");
        String bearing = practice("look", "compass").at("/seen/bearing_deg").asText();
        String altitude = practice("look", "scale").at("/seen/altitude_deg").asText();
        practice("look", "rocking");
        ordinary("sight", "compass", bearing);
        ordinary("sight", "scale", altitude);
        JsonNode unneeded = practice("debrief").get("not_needed");
        assertThat(unneeded).extracting(waste -> waste.get("reason").asText()).containsOnly("not_logged");
        // The first compass reading, and the swing in right ascension.
        assertThat(unneeded).hasSize(2);
    }

    @Test
    void sameActions_giveTheSameReadings_andBitIdenticalFrames() throws IOException {
        practice("begin", "--camera");
        String first = practice("look", "compass").get("seen").toString();
        byte[] frame = Files.readAllBytes(
                Path.of(practice("frame", "--turned", "30").at("/seen/file").asText()));
        practice("begin", "--camera");
        assertThat(practice("look", "compass").get("seen").toString()).isEqualTo(first);
        assertThat(Files.readAllBytes(Path.of(
                        practice("frame", "--turned", "30").at("/seen/file").asText())))
                .isEqualTo(frame);
        assertThat(actionFile()).exists();
    }

    @Test
    void repeatedKey_doesNothing() throws IOException {
        practice("begin", "--key", "a");
        practice("begin", "--key", "a");
        assertThat(person.file("data/polewright/practice/2")).doesNotExist();
        JsonNode once = practice("screw", "azimuth", "1/4", "--key", "b");
        assertThat(practice("screw", "azimuth", "1/4", "--key", "b")).isEqualTo(once);
        assertThat(Files.readAllLines(actionFile())).hasSize(2);
    }

    @Test
    void partialLine_isIgnored_andReplacedByTheNextAction() throws IOException {
        practice("begin");
        practice("look", "compass");
        Files.writeString(actionFile(), "{\"deed\":\"scr", StandardOpenOption.APPEND);
        JsonNode after = practice("look", "scale");
        assertThat(after.get("now").asText()).isEqualTo("2026-11-25T19:04:00Z");
        try (Stream<String> lines = Files.lines(actionFile())) {
            assertThat(lines).hasSize(3);
        }
    }

    @Test
    void consecutiveShortTurns_areOneTurn() {
        practice("begin");
        long first = practice("screw", "altitude", "1/8").get("took_s").asLong();
        assertThat(first).isEqualTo(90);
        assertThat(practice("screw", "altitude", "1/8").get("took_s").asLong()).isZero();
        assertThat(practice("screw", "altitude", "1/8 ccw").get("took_s").asLong())
                .isEqualTo(30);
    }

    @Test
    void swingView_isDrawn_withoutMarkingTheCentreOfRotation() throws IOException {
        practice("begin");
        Path file = person.file("rocked.svg");
        person.good("practice", "look", "rocking", "--picture", file.toString(), "--dark");
        assertThat(Files.readString(file)).contains("<polyline", "class=\"stars\"", "a tenth (0.1) of the field");
    }

    @Test
    void impossibleAction_isRefusedInASentence_andChangesNothing() throws IOException {
        assertThat(person.run("practice", "look", "compass").complaint())
                .isEqualTo("polewright practice look compass: no practice has begun. Begin one with polewright practice"
                        + " begin.");
        practice("begin");
        assertThat(person.run("practice", "frame", "--turned", "0").complaint())
                .isEqualTo(
                        "polewright practice frame: this practice has no camera. Begin another, with a" + " camera.");
        assertThat(person.run("practice", "unclamp").complaint())
                .isEqualTo("polewright practice unclamp: the clamps are already loose. Tighten them first.");
        assertThat(person.run("practice", "screw", "azimuth", "0").complaint()).contains("no turn is 0 long");
        assertThat(person.run("practice", "look", "drift", "canopus", "--minutes", "5")
                        .complaint())
                .contains("Canopus is below the horizon");
        practice("clamp");
        assertThat(person.run("practice", "screw", "azimuth", "1").complaint())
                .contains("the clamps are tight. Loosen them first");
        assertThat(person.run("practice", "do", "--", "practice", "begin").status())
                .isEqualTo(2);
        assertThat(Files.readAllLines(actionFile())).hasSize(2);
    }

    @Test
    void truth_isShownOnlyInTheDebrief() {
        practice("begin");
        String result =
                practice("look", "compass").toString() + person.good("practice").out();
        assertThat(result).doesNotContain("east", "truth");
    }
}
