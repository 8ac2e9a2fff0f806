package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.operations.ExitStatus;

/** One line says that a sighting is impossible, and the next best one is advised. */
class SkipCommandTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void beginWithGroundRead() {
        person = CommandRun.begun(folder, "2026-11-25T20:00:00Z", "54.60,-2.90,240");
        person.good("sight", "scale", "54.2");
        person.good("sight", "compass", "2");
    }

    private JsonNode next() {
        return person.good("next", "--json").json();
    }

    private static String flat(CommandRun.Outcome outcome) {
        return outcome.out().replaceAll("\\s+", " ");
    }

    @Test
    void next_saysHowToSkip_andSkipGivesTheNextStep() {
        String star = next().get("star").get("name").textValue();
        assertThat(flat(person.good("next"))).contains("ELSE polewright skip not-found (or hidden, cloud, no-optic)");
        assertThat(flat(person.good("skip", "not-found")))
                .contains("Logged #4: skipped a drift on " + star + ": not found.")
                .contains("NOTE " + star + " will not be suggested again tonight.")
                .contains("SIGHT ");
        assertThat(next().get("star").get("name").textValue()).isNotEqualTo(star);
        assertThat(flat(person.good("log"))).contains("skipped a drift on " + star + ": not found");
        person.good("undo");
        assertThat(next().get("star").get("name").textValue()).isEqualTo(star);
    }

    @Test
    void replay_listsSkips_untilUndone() {
        String star = next().get("star").get("name").textValue();
        person.good("log", "export", person.file("before.jsonl").toString());
        JsonNode before = last(person.good("replay", person.file("before.jsonl").toString(), "--json")
                .json());
        assertThat(before.has("skipped")).isFalse();
        person.good("skip", "not-found");
        person.good("log", "export", person.file("after.jsonl").toString());
        JsonNode after = last(person.good("replay", person.file("after.jsonl").toString(), "--json")
                .json());
        assertThat(after.get("skipped")).hasSize(1);
        assertThat(after.get("skipped").get(0).get("seq").intValue()).isEqualTo(4);
        assertThat(after.get("skipped").get(0).get("sighting").textValue()).isEqualTo("drift");
        assertThat(after.get("skipped").get(0).get("because").textValue()).isEqualTo("not_found");
        assertThat(after.get("skipped").get(0).get("star").textValue()).isEqualTo(star);
    }

    private static JsonNode last(JsonNode records) {
        return records.get(records.size() - 1);
    }

    @Test
    void skippedEyepiece_isTheAdvisedOne_andNextNamesAnother() {
        assertThat(flat(person.good("next"))).contains("--with reticle");
        assertThat(flat(person.good("skip", "no-optic"))).contains("skipped a drift: no reticle.");
        assertThat(flat(person.good("next"))).doesNotContain("--with reticle");
        assertThat(person.run("skip", "no-optic", "--sighting", "drift", "--optic", "microscope")
                        .complaint())
                .contains("the rig has no optic called 'microscope'. It has finder, eyepiece");
    }

    @Test
    void unsuitableReason_isRefused_andNotLogged() {
        CommandRun.Outcome refused = person.run("skip", "cloud", "--sighting", "compass");
        assertThat(refused.status()).isEqualTo(ExitStatus.WRONG_USAGE);
        assertThat(refused.complaint()).contains("'cloud' does not apply to the compass");
        assertThat(person.run("skip", "rain").complaint()).contains("'rain' is not one of the choices");
        assertThat(person.good("log").out()).doesNotContain("skipped");
    }

    @Test
    void everythingSkipped_waitsForTheSky() {
        for (int i = 0; i < 40 && next().get("do").textValue().equals("sight"); i++) {
            person.good("skip", "cloud");
        }
        assertThat(next().get("do").textValue()).isEqualTo("wait_for_sky");
        assertThat(flat(person.good("next")))
                .contains("WAIT No sighting is left: everything that could come next has been skipped.")
                .contains("NEXT Look again at 21:00 UTC, when the cloud may have passed.")
                .contains("THEN polewright undo NUMBER brings one back; polewright log lists them");
        assertThat(person.run("skip", "cloud").complaint())
                .contains("no sighting is advised now. Name the one that cannot be taken");
    }
}
