package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.operations.CommandRun;

/**
 * Photographs of the real sky with known pointings (granasat/startrackerpy, MIT; esa/tetra3, Apache-2.0;
 * UBNanosatLab/openstartracker, MIT; see the folder's README), solved through the command as a user types it. The
 * truth is the {@code pointing_best} value of the file next to each. The photographs are not part of the project:
 * without the folder the tests are skipped, and say so.
 */
class RealPhotographsTest {
    private static final Path FOLDER = Path.of("..", "..", "shared", "frames");

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void setUp() {
        assumeTrue(Files.isDirectory(FOLDER), "no photographs at " + FOLDER + ": their tests are skipped");
        person = new CommandRun(folder, "2026-11-25T21:00:00Z");
    }

    private static JsonNode truth(String name) throws IOException {
        String json = name.substring(0, name.lastIndexOf('.')) + ".json";
        return new ObjectMapper().readTree(Files.readString(FOLDER.resolve(json)));
    }

    private void assertPlaced(String name, JsonNode truth, String... hints) {
        List<String> typed =
                new ArrayList<>(List.of("attitude", FOLDER.resolve(name).toString(), "--json"));
        typed.addAll(List.of(hints));
        JsonNode result = person.good(typed.toArray(String[]::new)).json();
        JsonNode best = truth.get("pointing_best");
        double pixelArcsec = truth.get("pixel_scale_arcsec").doubleValue();
        double allowedArcsec = Math.max(3 * best.get("adopted_error_arcsec").doubleValue(), pixelArcsec);
        double residualArcsec = Math.toDegrees(Vector3D.angle(
                        direction(result, "ra_icrs_deg", "dec_icrs_deg"), direction(best, "ra_deg", "dec_deg")))
                * 3600;
        assertThat(residualArcsec).as(name + " by " + result).isLessThan(allowedArcsec);
        assertThat(result.get("mirrored").booleanValue())
                .isEqualTo(truth.get("mirrored").booleanValue());
        double turned =
                result.get("roll_deg").doubleValue() - best.get("roll_deg").doubleValue();
        assertThat(Math.abs((turned + 540) % 360 - 180)).isLessThan(0.15);
    }

    private static Vector3D direction(JsonNode place, String rightAscension, String declination) {
        return new Vector3D(
                Math.toRadians(place.get(rightAscension).doubleValue()),
                Math.toRadians(place.get(declination).doubleValue()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "granasat_polar_05sec.jpg",
                "tetra3_Alt40_Azi135.tiff",
                "tetra3_Alt60_Azim45.tiff",
                "openstartracker_img6.png"
            })
    void everyPhotograph_isSolvedBlind_byScale_andByPosition(String name) throws IOException {
        JsonNode truth = truth(name);
        JsonNode best = truth.get("pointing_best");
        assertPlaced(name, truth);
        // Known to 20 %, and wrong by almost that much.
        double scale = truth.get("pixel_scale_arcsec").doubleValue() * 0.85;
        assertPlaced(name, truth, "--scale", String.format(Locale.ROOT, "%.2f,20%%", scale));
        assertPlaced(
                name,
                truth,
                "--scale",
                String.format(Locale.ROOT, "%.2f", scale),
                "--near",
                String.format(
                        Locale.ROOT,
                        "%.3f,%.3f",
                        best.get("ra_deg").doubleValue(),
                        best.get("dec_deg").doubleValue() - 3),
                "--within",
                "5");
    }
}
