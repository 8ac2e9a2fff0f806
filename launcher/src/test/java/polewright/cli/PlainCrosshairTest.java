package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

/**
 * Drift without a graduated reticle: a fraction of the way from centre to edge, or the time until the star leaves the
 * ring.
 */
class PlainCrosshairTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void begin() {
        person = CommandRun.begun(folder, "2026-11-25T20:00:00Z", "54.60,-2.90,240");
    }

    private JsonNode logged(String typed) {
        person.good(typed.split(" ", -1));
        JsonNode log = person.good("log", "--json").json();
        return log.get(log.size() - 1);
    }

    /** A fifth of the radius of a 0.8° field is 4.8′; a tenth of the radius is 2.4′. */
    @Test
    void fractionOfTheRadius_isConverted_withATenthOfTheRadiusUncertainty() {
        JsonNode drift = logged(
                "sight drift capella --as-typed --minutes 5 --moved 0.2 --unit radii --toward n" + " --with eyepiece");
        assertThat(drift.get("unit").textValue()).isEqualTo("fields");
        assertThat(drift.get("count").doubleValue() * drift.get("field_deg").doubleValue() * 60)
                .isCloseTo(4.8, within(1e-9));
        assertThat(drift.get("sigma_arcsec").doubleValue() / 60).isCloseTo(2.4, within(1e-9));
    }

    @Test
    void starLeavingTheRing_hasDriftedItsRadius() {
        JsonNode drift = logged("sight drift capella --as-typed --minutes 12 --moved 1 --unit radii --toward s"
                + " --field 0.2 --sigma 0.05");
        assertThat(drift.get("count").doubleValue() * drift.get("field_deg").doubleValue() * 60)
                .isCloseTo(6, within(1e-9));
        assertThat(drift.get("sigma_arcsec").doubleValue()).isCloseTo(0.05 * 360, within(1e-9));
    }

    @Test
    void zeroUncertainty_isRefused() {
        String typed = "sight drift capella --minutes 5 --moved 0.2 --unit radii --toward n --with eyepiece --sigma 0";
        assertThat(person.run(typed.split(" ", -1)).complaint())
                .contains("an uncertainty of 0 of the way to the edge is not above 0");
    }

    @Test
    void withoutTheReticle_advisedCommandUsesFractionsOfTheRadius() {
        person.good("sight", "scale", "54.2");
        person.good("sight", "compass", "2");
        person.good("skip", "no-optic", "--sighting", "drift", "--optic", "reticle");
        for (int i = 0; i < 20 && !person.good("next").out().contains("sight drift"); i++) {
            person.good("skip", "not-found");
        }
        assertThat(person.good("next").out().replaceAll("\\s+", " "))
                .contains("N in fractions of the way to the edge", "--unit radii --with eyepiece");
    }
}
