package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;

/** The next step, briefly ({@code next}) and in full ({@code advise}). */
@Tag("slow")
class NextAndAdviseTest {
    private static final String LARKFELL = "54.60,-2.90,240";
    private static final String PICTURES = "allow shot pictures --exposure 60 --focal-length 1200 --pixel 3.76";

    @TempDir
    private Path folder;

    private CommandRun evening(String site, String at) {
        CommandRun person = new CommandRun(folder, at);
        person.good("begin", "--site", site);
        return person;
    }

    private static CommandRun.Outcome type(CommandRun person, String typed) {
        person.waitMinutes(3);
        return person.good(typed.split(" ", -1));
    }

    private static String flat(CommandRun.Outcome outcome) {
        return outcome.out().replaceAll("\\s+", " ");
    }

    /** An axis about 20′ off, known to a few arcminutes. */
    private CommandRun withAnAxis(String site, String at, String star) {
        return withAnAxis(evening(site, at), site, star);
    }

    private static CommandRun withAnAxis(CommandRun person, String site, String star) {
        // Tussock Flat's magnetic declination is 25° east, so a compass along an axis to the south reads 155°.
        type(person, "sight compass " + (site.startsWith("-") ? "155" : "0"));
        type(person, "sight scale " + (site.startsWith("-") ? "43.95" : "54.6"));
        type(person, "sight still " + star + " --distance 0.1 --toward 2 --with finder --sigma 0.02");
        return person;
    }

    @Test
    void next_isOneStepWithoutReasons() {
        CommandRun person = evening(LARKFELL, "2026-11-25T20:00:00Z");
        assertThat(person.good("next").lines())
                .containsExactly(
                        "SIGHT level and scale",
                        "THEN  polewright sight scale ALTITUDE",
                        "ELSE  polewright skip no-instrument");
        type(person, "sight scale 54");
        assertThat(person.good("next").lines())
                .containsExactly(
                        "SIGHT the compass",
                        "THEN  polewright sight compass BEARING",
                        "ELSE  polewright skip no-instrument");
    }

    @Test
    void next_namesTheScrews_thenTheStarAndDuration() {
        CommandRun person = withAnAxis(LARKFELL, "2026-11-25T20:00:00Z", "polaris");
        type(person, PICTURES);
        assertThat(person.good("next").lines())
                .containsExactly(
                        "TURN  altitude screw 15/16 turn counter-clockwise, looking at its head (a test",
                        "      turn).",
                        "TURN  azimuth screw 2 1/4 turns counter-clockwise, looking at its head (a test",
                        "      turn).",
                        "NOTE  Test turns: the screw directions are not yet known. The next sighting will",
                        "      show them.",
                        "THEN  polewright turn --altitude \"15/16 ccw\" --azimuth \"2 1/4 ccw\"");
        person.waitMinutes(3);
        person.good("turn", "--altitude", "15/16 ccw", "--azimuth", "2 1/4 ccw");
        assertThat(person.good("next").lines())
                .containsExactly(
                        "SIGHT the centre of rotation by Polaris",
                        "STAR  Polaris: north (1°), 55° up",
                        "THEN  log it; FIELDS in field widths, CLOCK such as 4.5:",
                        "  polewright sight still polaris --distance FIELDS --toward CLOCK --with finder",
                        "ELSE  polewright skip not-in-view (or hidden, cloud, no-optic)");
    }

    @Test
    void firstTurnOfAnUnknownScrew_isATest_butNotForAKnownRig() throws IOException {
        String assumed = "NOTE Test turns: the screw directions are not yet known";
        CommandRun person = withAnAxis(LARKFELL, "2026-11-25T20:00:00Z", "polaris");
        type(person, PICTURES);
        assertThat(flat(person.good("advise"))).containsOnlyOnce(assumed);
        String text = person.good("rig").out();
        // Too small a turn for the next sighting to show.
        type(person, "turn --altitude 1/8 --azimuth 1/8");
        withAnAxis(person, LARKFELL, "polaris");
        assertThat(flat(person.good("advise"))).contains("a test turn").doesNotContain("goes the other way");

        Path rig = person.file("rig.json");
        Files.writeString(rig, text.replace("\"clockwise_assumed\" : true", "\"clockwise_assumed\" : false"));
        CommandRun other = new CommandRun(Files.createDirectory(person.file("other")), "2026-11-25T20:00:00Z");
        other.good("begin", "--site", LARKFELL, "--rig", rig.toString());
        withAnAxis(other, LARKFELL, "polaris");
        type(other, PICTURES);
        assertThat(flat(other.good("advise"))).contains("TURN ").doesNotContain(assumed);
    }

    /** Two positions, one half as likely as the other, are not one position with a small uncertainty. */
    @Test
    void afterTurningAnUnknownScrew_allPossiblePositionsAreShown_andASightingIsAdvised() throws IOException {
        CommandRun person = withAnAxis(LARKFELL, "2026-11-25T20:00:00Z", "polaris");
        type(person, PICTURES);
        type(person, "turn --azimuth 3");
        assertThat(flat(person.good("fix")))
                .containsPattern("Axis: \\S+ \\w+, \\S+ \\w+ \\(50 %\\) or \\S+ \\w+, \\S+ \\w+ \\(50 %\\)")
                .contains("; it depends on which way the screws move the axis.");
        assertThat(flat(person.good("next"))).startsWith("SIGHT ").doesNotContain("TURN ");
        Path picture = person.file("zone.svg");
        person.good("advise", "--picture", picture.toString());
        assertThat(Files.readString(picture)).contains("possible axis");
    }

    @Test
    void movingByHand_isPrecededByItsCaution() {
        CommandRun person = evening(LARKFELL, "2026-11-25T20:00:00Z");
        type(person, "sight scale 54.6");
        String result = flat(type(person, "sight compass 30"));
        assertThat(result)
                .contains("MOVE the mount by hand, roughly. It is too far off for the screws. CARE The mount is heavy:"
                        + " two people. Clamp the tube first so that it cannot swing; hold the fork's weight"
                        + " before you loosen"
                        + " the tilt clamp; keep the tripod from tipping. SWING about ");
        assertThat(flat(person.good("next"))).contains("CARE The mount is heavy: two people.");
    }

    @Test
    void nextJson_isTheAdviceAndItsText() {
        CommandRun person = evening(LARKFELL, "2026-11-25T20:00:00Z");
        JsonNode next = person.good("next", "--json").json();
        assertThat(next.get("do").textValue()).isEqualTo("sight");
        assertThat(next.get("sighting").textValue()).isEqualTo("level_and_scale");
        assertThat(next.get("words").get(0).textValue()).isEqualTo("SIGHT level and scale");
    }

    @Test
    void cautions_areNeverOmitted() {
        // Near the zenith the Sun casts no usable shadow: once compass and scale are read, nothing is left to do by
        // day.
        CommandRun person = evening("-30,170,0", "2026-12-21T00:30:00Z");
        type(person, "sight compass 164");
        type(person, "sight scale 30");
        String next = person.good("next").out();
        assertThat(next)
                .startsWith("WAIT  until the Sun is down at ")
                .contains("CARE  Keep tube and finder capped while the Sun is up.");
    }

    /** By local mean time it is 11:50 at 80 degrees east, and 01:10 at 80 degrees west. */
    @Test
    void daytimeAdvice_namesTheClockOrSiteErrorThatWouldExplainDarkness() {
        CommandRun person = evening("-30,80,0", "2026-12-21T06:30:00Z");
        type(person, "sight compass 202");
        type(person, "sight scale 30");
        assertThat(flat(person.good("next")))
                .contains("NOTE By this clock and site the Sun is up. If it is dark where you are, one of them is"
                        + " wrong: it would be"
                        + " dark if the site were west of Greenwich");
    }

    @Test
    void shadowSighting_neverLooksAtTheSun() {
        CommandRun person = evening("-43.95,170.40,710", "2026-01-15T20:30:00Z");
        type(person, "sight scale 43.95");
        String output = type(person, "sight compass 155").out();
        assertThat(output).contains("SIGHT Measure the angle from a plumb line's shadow");
        for (String result :
                List.of(output, person.good("advise").out(), person.good("next").out())) {
            assertThat(result.replaceAll("\\s+", " "))
                    .contains(
                            "CARE Work with the shadow only. Never look at the Sun or point tube or finder toward it.");
        }
    }

    @ParameterizedTest
    @CsvSource({
        "'54.60,-2.90,240', 2026-11-25T20:00:00Z, polaris",
        "'-43.95,170.40,710', 2026-11-25T10:30:00Z, sigoct",
    })
    void advise_givesExposureLimits_andTheGainFromOtherSightings(String site, String at, String star) {
        CommandRun person = withAnAxis(site, at, star);
        type(person, PICTURES);
        String result = flat(person.good("advise"));
        assertThat(result)
                .containsPattern("ZONE Good enough for pictures: within [\\d.]+′ of the best aim. Chance now:"
                        + " (under )?\\d+ %\\.")
                .containsPattern(
                        "SHOT pictures \\(60 s wanted\\): with the axis as it is, stars stay round for [\\d.]+ s"
                                + " unguided, [\\d.]+ (s|minutes)"
                                + " guided. One more adjustment, about \\d+ minutes' work: [\\d.]+ (s|minutes)"
                                + " unguided, ")
                .containsPattern(
                        "RANK Possible next sightings, best gain per minute first. The percentage is the chance of"
                                + " being good enough after it and the turn that follows: 1\\. .*: \\d+ minutes in"
                                + " all, ");
        assertThat(result).containsPattern("1\\. a drift on [A-Z]").containsPattern("2\\. a drift on [A-Z]");
        JsonNode json = person.good("advise", "--json").json();
        JsonNode shot = json.get("exposures").get(0);
        assertThat(shot.get("name").textValue()).isEqualTo("pictures");
        assertThat(shot.get("wanted_s").doubleValue()).isEqualTo(60);
        double now = shot.get("now").get("unguided_s").doubleValue();
        JsonNode after = shot.get("after_one_more_adjustment");
        assertThat(now).isBetween(0.5, 60.0);
        assertThat(shot.get("now").get("guided_s").doubleValue()).isGreaterThan(now);
        assertThat(after.get("unguided_s").doubleValue()).isGreaterThan(now);
        assertThat(after.get("minutes").doubleValue()).isBetween(1.0, 90.0);
        assertThat(shot.get("long_enough").booleanValue()).isFalse();
        assertThat(shot.get("worth_adjusting").booleanValue()).isTrue();
        assertThat(json.get("allowance").get("strictest").textValue()).isEqualTo("pictures");
        JsonNode ranking = json.get("ranking");
        assertThat(ranking.size()).isGreaterThan(1);
        assertThat(ranking.get(0).get("probability_after").doubleValue()).isBetween(0.0, 1.0);
        assertThat(ranking.get(0).get("minutes").doubleValue()).isPositive();
    }

    @Test
    void fix_saysYesOrNo() {
        CommandRun person = withAnAxis(LARKFELL, "2026-11-25T20:00:00Z", "polaris");
        type(person, "allow 1");
        assertThat(flat(person.good("fix")))
                .contains("′ from the north celestial pole. Chance of being within 1′ of" + " the pole: under 1 %.");
        type(person, PICTURES);
        assertThat(flat(person.good("fix"))).containsPattern("Chance of being good enough for pictures: ");
        type(person, "allow 90");
        assertThat(flat(person.good("fix")))
                .contains("′ from the north celestial pole. Chance of being within 90′ of the pole: 99 %.");
    }

    @Test
    void attainableExposures_areReported() {
        CommandRun person = withAnAxis(LARKFELL, "2026-11-25T20:00:00Z", "polaris");
        type(person, "allow shot wide --exposure 1 --focal-length 50 --pixel 5");
        assertThat(flat(person.good("advise"))).contains("That is long enough. No need to adjust further.");
        JsonNode shot = person.good("advise", "--json").json().get("exposures").get(0);
        assertThat(shot.get("long_enough").booleanValue()).isTrue();
        assertThat(shot.get("worth_adjusting").booleanValue()).isFalse();
    }

    @Test
    void withoutAFix_exposuresAreNotMentioned() {
        CommandRun person = evening(LARKFELL, "2026-11-25T20:00:00Z");
        type(person, PICTURES);
        assertThat(person.good("advise").out()).doesNotContain("SHOT");
        assertThat(person.good("advise", "--json").json().get("exposures")).isEmpty();
    }

    @Test
    void zoneAndWedge_areDrawn() throws IOException {
        CommandRun person = withAnAxis(LARKFELL, "2026-11-25T20:00:00Z", "polaris");
        type(person, PICTURES);
        type(person, "turn --azimuth 1/4");
        type(person, "sight drift rigel --minutes 5 --moved 2 --toward south --with reticle --at 2026-11-25T23:40Z");
        Path zone = person.file("zone.svg");
        Path wedge = person.file("wedge.svg");
        assertThat(person.good("advise", "--picture", zone.toString(), "--wedge", wedge.toString())
                        .out())
                .endsWith("Drawn: " + zone + "\nDrawn: " + wedge + "\n");
        assertThat(Files.readString(zone)).startsWith("<svg").contains("pictures");
        assertThat(Files.readString(wedge)).startsWith("<svg");
        assertThat(person.good("advise", "--draw").out()).contains("north celestial pole");
        assertThat(person.good("advise", "--draw", "--json").json().has("do")).isTrue();
    }

    @Test
    void wedgeDrawing_saysWhenTheScrewsMustWait() throws IOException {
        CommandRun person = evening(LARKFELL, "2026-11-25T20:00:00Z");
        Path wedge = person.file("wedge.svg");
        person.good("advise", "--wedge", wedge.toString());
        assertThat(Files.readString(wedge))
                .contains("Not yet: take the sighting first", "Leave the azimuth screw for now.")
                .doesNotContain("alone");
    }

    @Test
    void replay_showsAllowanceAndAdviceAfterEachEvent() {
        CommandRun person = withAnAxis(LARKFELL, "2026-11-25T20:00:00Z", "polaris");
        type(person, PICTURES);
        type(person, "allow 3");
        Path file = person.file("night.jsonl");
        person.good("log", "export", file.toString());
        JsonNode night = person.good("replay", file.toString(), "--json").json();
        assertThat(night).hasSize(6).allSatisfy(event -> {
            assertThat(event.get("allowance").get("depth_arcmin").doubleValue()).isPositive();
            assertThat(event.get("advice").has("do")).isTrue();
        });
        assertThat(night.get(3).get("allowance").get("shape").textValue()).isEqualTo("disc");
        assertThat(night.get(4).get("allowance").get("strictest").textValue()).isEqualTo("pictures");
        assertThat(night.get(5).get("allowance").get("words").textValue()).isEqualTo("within 3′ of the pole");
        String result = flat(person.good("replay", file.toString()));
        assertThat(result)
                .contains(": work: pictures. Axis: ")
                .containsPattern("ZONE Good enough for pictures: within [\\d.]+′ of the best aim. Chance now: ")
                .contains("ZONE Within 3′ of the pole. Chance now: ");
    }

    @Test
    void withoutALog_theFirstStepIsGiven() {
        CommandRun newcomer = new CommandRun(folder.resolve("new"), "2026-01-15T20:00:00Z");
        for (String command : new String[] {"next", "allow"}) {
            CommandRun.Outcome outcome = newcomer.run(command);
            assertThat(outcome.err())
                    .isEqualTo("polewright " + command + ": there is no log yet at " + newcomer.log()
                            + ". Begin a night first, with polewright begin --site LAT,LON.\n");
            assertThat(outcome.status()).isEqualTo(1);
        }
    }
}
