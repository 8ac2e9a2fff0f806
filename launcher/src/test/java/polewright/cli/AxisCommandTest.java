package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.operations.camera.CameraEvening;

/** The axis from rendered frames, taken while a fork with a known axis error was turned in right ascension. */
@Tag("slow")
class AxisCommandTest {
    private static final String LARKFELL = "54.60,-2.90,240";
    private static final String TUSSOCK_FLAT = "-43.95,170.40,710";
    // Frames of 20.6″ pixels with some sixty stars: one arcsecond each; the error is a little larger for the axis.
    private static final double ARCMIN = 0.1;

    @TempDir
    private static Path frames;

    private static List<String> northern;
    private static List<String> stationary;
    private static List<String> southern;

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeAll
    static void takeFrames() throws java.io.IOException {
        northern = names(CameraEvening.atLarkfell().takeTurning(subfolder("north"), 3, 30));
        CameraEvening stationaryMount = CameraEvening.atLarkfell();
        stationaryMount.stopDrive();
        List<Path> files = new ArrayList<>();
        files.add(stationaryMount.take(subfolder("still").resolve("a.fits")));
        files.add(stationaryMount.take(frames.resolve("still").resolve("b.fits")));
        stationaryMount.turnRightAscension(-40);
        files.add(stationaryMount.take(frames.resolve("still").resolve("c.fits")));
        stationary = names(files);
        southern = names(CameraEvening.atTussockFlat().takeTurning(subfolder("south"), 3, -35));
    }

    private static Path subfolder(String name) throws java.io.IOException {
        return java.nio.file.Files.createDirectories(frames.resolve(name));
    }

    private static List<String> names(List<Path> files) {
        return files.stream().map(Path::toString).toList();
    }

    @BeforeEach
    void setUp() {
        person = new CommandRun(folder, "2026-11-25T21:00:00Z");
    }

    private CommandRun.Outcome axis(List<String> files, String site, String... more) {
        List<String> typed = new ArrayList<>(List.of("axis"));
        typed.addAll(files);
        typed.addAll(List.of("--site", site, "--near", "pole", "--within", "25"));
        typed.addAll(List.of(more));
        return person.good(typed.toArray(String[]::new));
    }

    private static List<Double> numbers(JsonNode array) {
        List<Double> numbers = new ArrayList<>();
        array.forEach(n -> numbers.add(n.doubleValue()));
        return numbers;
    }

    @Test
    void threeFrames_recoverTheTrueAxis() {
        JsonNode result = axis(northern, LARKFELL, "--json").json();
        assertThat(result.get("east_arcmin").doubleValue()).isCloseTo(42, within(ARCMIN));
        assertThat(result.get("up_arcmin").doubleValue()).isCloseTo(-17, within(ARCMIN));
        // An offset east on the sky is not azimuth: 42′ / cos 54.3°.
        assertThat(result.get("azimuth_error_arcmin").doubleValue()).isCloseTo(72.0, within(2 * ARCMIN));
        JsonNode covariance = result.get("cov_arcmin2");
        assertThat(covariance).hasSize(2);
        assertThat(covariance.get(0).get(1).doubleValue())
                .isEqualTo(covariance.get(1).get(0).doubleValue());
        assertThat(Math.sqrt(covariance.get(0).get(0).doubleValue())).isBetween(1e-4, ARCMIN);
        // Half a minute of tracking between frames adds an eighth of a degree.
        assertThat(numbers(result.get("rotation_deg")))
                .hasSize(2)
                .allSatisfy(turn -> assertThat(turn).isCloseTo(30.125, within(0.01)));
        assertThat(result.get("residual_arcsec").doubleValue()).isBetween(1e-6, 5.0);
        assertThat(result.get("warnings")).isEmpty();
    }

    @Test
    void southernSite_usesTheSouthernEndOfTheAxis() {
        JsonNode result = axis(southern, TUSSOCK_FLAT, "--json").json();
        assertThat(result.get("east_arcmin").doubleValue()).isCloseTo(42, within(ARCMIN));
        assertThat(result.get("up_arcmin").doubleValue()).isCloseTo(-17, within(ARCMIN));
        assertThat(numbers(result.get("rotation_deg")))
                .allSatisfy(turn -> assertThat(turn).isCloseTo(-34.875, within(0.01)));
    }

    @Test
    void stationaryMount_worksAndIsRecognised() {
        JsonNode result = axis(stationary, LARKFELL, "--json").json();
        assertThat(result.get("drive").textValue()).isEqualTo("standing");
        assertThat(result.get("drive_seen").booleanValue()).isTrue();
        assertThat(result.get("east_arcmin").doubleValue()).isCloseTo(42, within(ARCMIN));
        assertThat(result.get("up_arcmin").doubleValue()).isCloseTo(-17, within(ARCMIN));
        assertThat(numbers(result.get("rotation_deg")).get(0)).isCloseTo(0, within(0.01));
    }

    @Test
    void enteredDriveState_isRepeatedUnlessTheFramesContradictIt() {
        assertThat(axis(northern, LARKFELL, "--drive", "tracking", "--json")
                        .json()
                        .get("drive")
                        .textValue())
                .isEqualTo("tracking");
        assertThat(axis(northern, LARKFELL, "--json").json().get("drive").textValue())
                .isEqualTo("not_told");
        assertThat(axis(stationary, LARKFELL, "--drive", "tracking", "--json")
                        .json()
                        .get("warnings")
                        .get(0)
                        .textValue())
                .isEqualTo("the drive was off, not tracking as given. The axis does not depend on it.");
    }

    @Test
    void fileOrder_doesNotMatter() {
        List<String> shuffled = List.of(northern.get(2), northern.get(0), northern.get(1));
        assertThat(axis(shuffled, LARKFELL, "--json").json().get("east_arcmin").doubleValue())
                .isCloseTo(
                        axis(northern, LARKFELL, "--json")
                                .json()
                                .get("east_arcmin")
                                .doubleValue(),
                        within(0.02));
    }

    @Test
    void twoFrames_areEnough_butUnchecked() {
        JsonNode result = axis(northern.subList(0, 2), LARKFELL, "--json").json();
        assertThat(result.get("east_arcmin").doubleValue()).isCloseTo(42, within(3 * ARCMIN));
        assertThat(result.get("warnings")).hasSize(1);
        assertThat(result.get("warnings").get(0).textValue())
                .startsWith("two frames always fit some axis, so nothing checks them");
    }

    @Test
    void text_givesFramesThenAxisThenBasis() {
        String result = axis(northern, LARKFELL).out();
        assertThat(result.lines()
                        .limit(3)
                        .map(l -> l.replaceAll("[\\d.]+″", "#″").replaceAll("\\d+ of \\d+", "# of #")))
                .containsExactly(
                        "1. turn1.fits, 20:00:00 UTC: # of # stars matched, centre to #″.",
                        "2. turn2.fits, 20:00:30 UTC: # of # stars matched, centre to #″.",
                        "3. turn3.fits, 20:01:00 UTC: # of # stars matched, centre to #″.");
        assertThat(result.replaceAll("\\s+", " "))
                .containsPattern("Axis: 4[12]′\\d\\d″ east, 1[67]′\\d\\d″ low \\(±[\\d.]+″( east–west, ±[\\d.]+″"
                        + " up–down)?\\)\\.")
                .containsPattern("In azimuth and altitude: 7[12]′\\d\\d″ right, 17′\\d\\d″ low\\.")
                .containsPattern(
                        "RA turned 30\\.1° westward, then 30\\.1° westward; the frames agree" + " to [\\d.]+″\\.")
                .contains("The frames do not show whether the drive was on; the axis does not depend on it.")
                .doesNotContain("NOTE");
        assertThat(result.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void times_canBeGivenInFileOrder() {
        // One hour late, the sky has turned by 15°, and the offset with it.
        JsonNode late = axis(
                        northern,
                        LARKFELL,
                        "--at",
                        "2026-11-25T21:00Z,2026-11-25T21:00:30Z,2026-11-25T21:01Z",
                        "--json")
                .json();
        assertThat(Math.hypot(
                        late.get("east_arcmin").doubleValue() - 42,
                        late.get("up_arcmin").doubleValue() + 17))
                .isCloseTo(2 * Math.hypot(42, 17) * Math.sin(Math.toRadians(7.52)), within(0.3));
    }

    @Test
    void site_defaultsToTheLastNights() {
        person.good("begin", "--site", LARKFELL);
        List<String> typed = new ArrayList<>(List.of("axis"));
        typed.addAll(northern);
        typed.addAll(List.of("--near", "pole", "--within", "25", "--json"));
        assertThat(person.good(typed.toArray(String[]::new))
                        .json()
                        .get("east_arcmin")
                        .doubleValue())
                .isCloseTo(42, within(ARCMIN));
        assertThat(person.events()).isEqualTo(1);
    }

    @Test
    void picture_showsTheLastFrame() throws java.io.IOException {
        Path drawn = folder.resolve("axis.png");
        assertThat(axis(northern, LARKFELL, "--picture", drawn.toString()).out())
                .endsWith("Drawn: " + drawn + "\n");
        BufferedImage image = ImageIO.read(drawn.toFile());
        assertThat(image.getWidth()).isEqualTo(1200);
    }
}
