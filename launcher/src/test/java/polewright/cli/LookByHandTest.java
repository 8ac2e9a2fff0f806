package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.operations.CommandRun.Outcome;

/** Visual observing without go-to: only tracking limits the axis error. */
class LookByHandTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void beginNight() {
        person = new CommandRun(folder, "2026-01-15T20:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
    }

    private Outcome good(String typed) {
        return person.good(typed.split(" "));
    }

    private JsonNode allowed() {
        return good("allow --json").json();
    }

    @Test
    void observingByHand_isLimitedByTrackingAlone_andKeptInTheLog() {
        String result = good("allow --for look by hand").out().replaceAll("\\s+", " ");
        assertThat(result)
                .contains("The work would tolerate more, but 60′ is the limit for any mount.")
                .doesNotContain("go-tos miss", "anything:", "good enough for anything");
        assertThat(good("advise").out()).contains("Good enough for a look by hand: within 60′ of the best aim.");
        assertThat(good("tonight").out()).contains("The plan for a look by hand, by altitude");
        assertThat(good("allow").out().replaceAll("\\s+", " ")).contains("pushed by hand, no go-to");
        JsonNode work = allowed().get("work").get(0);
        assertThat(work.get("by_hand").booleanValue()).isTrue();
        assertThat(work.has("go_to_within_arcmin")).isFalse();
        assertThat(good("log --json").out()).contains("\"by_hand\":true");
    }

    @Test
    void observingByHand_mayDriftAQuarterOfTheField() {
        good("allow look moons --field 0.05 --stay 20 --by-hand");
        double byHand = allowed().get("depth_arcmin").doubleValue();
        good("allow look moons --field 0.05 --stay 20");
        assertThat(allowed().get("depth_arcmin").doubleValue() / byHand).isBetween(1.9, 2.3);
    }

    @Test
    void goToTogetherWithByHand_isRefused() {
        Outcome refused = person.run("allow", "look", "x", "--field", "1", "--go-to", "20", "--by-hand");
        assertThat(refused.status()).isEqualTo(2);
        assertThat(refused.complaint())
                .isEqualTo("polewright allow look: a look is either by hand or with go-to. Leave out --by-hand or"
                        + " --go-to.");
    }
}
