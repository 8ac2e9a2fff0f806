package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;
import polewright.image.FrameFacts;
import polewright.operations.CommandRun;
import polewright.operations.camera.CameraEvening;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SkyTruth;
import polewright.sky.place.CatalogueStar;

/** The attitude solved from one frame's stars, compared with the simulated attitude. */
class AttitudeCommandTest {
    // A pixel is 20.6″ wide; some sixty stars place the frame to a hundredth of a pixel.
    private static final double DEGREES = 1.0 / 3600;
    private static final double SCALE_ARCSEC = 20.63;

    @TempDir
    private static Path frames;

    private static SkyTruth truth;
    private static Frame picture;

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeAll
    static void takeFrame() {
        RenderedFrame rendered = CameraEvening.atLarkfell().take();
        truth = rendered.truth();
        picture = rendered.frame();
        CameraEvening.write(frames.resolve("frame.fits"), picture);
    }

    @BeforeEach
    void setUp() {
        person = new CommandRun(folder, "2026-11-25T21:00:00Z");
    }

    private JsonNode attitude(String... more) {
        List<String> typed = new ArrayList<>(List.of("attitude", frame()));
        typed.addAll(List.of(more));
        typed.add("--json");
        return person.good(typed.toArray(String[]::new)).json();
    }

    private static String frame() {
        return frames.resolve("frame.fits").toString();
    }

    private static void assertMatchesTruth(JsonNode result) {
        CatalogueStar centre = truth.centre();
        double cosDec = centre.declination().cos();
        assertThat(result.get("ra_icrs_deg").doubleValue())
                .isCloseTo(centre.rightAscension().degrees(), within(DEGREES / cosDec));
        assertThat(result.get("dec_icrs_deg").doubleValue())
                .isCloseTo(centre.declination().degrees(), within(DEGREES));
    }

    @Test
    void json_givesTheAttitude() {
        JsonNode result = attitude("--near", "pole", "--within", "25");
        assertMatchesTruth(result);
        assertThat(result.get("roll_deg").doubleValue()).isCloseTo(truth.roll().degrees(), within(0.02));
        assertThat(result.get("mirrored").booleanValue()).isFalse();
        assertThat(result.get("scale_arcsec_px").doubleValue()).isCloseTo(SCALE_ARCSEC, within(0.05));
        assertThat(result.get("stars_found").intValue()).isGreaterThan(30);
        assertThat(result.get("stars_matched").intValue())
                .isBetween(30, result.get("stars_found").intValue());
        assertThat(result.get("rms_arcsec").doubleValue()).isBetween(0.1, 6.0);
        assertThat(result.get("sigma_arcsec").doubleValue()).isBetween(0.01, 1.0);
        assertThat(result.get("log_odds").doubleValue()).isGreaterThan(30);
        assertThat(result.get("at").textValue()).isEqualTo("2026-11-25T20:00:00Z");
    }

    @Test
    void json_hasTheDocumentedKeys() {
        List<String> keys = new ArrayList<>();
        attitude("--near", "pole", "--within", "25").fieldNames().forEachRemaining(keys::add);
        assertThat(keys)
                .containsExactly(
                        "frame",
                        "at",
                        "ra_icrs_deg",
                        "dec_icrs_deg",
                        "roll_deg",
                        "scale_arcsec_px",
                        "mirrored",
                        "field_width_deg",
                        "field_height_deg",
                        "stars_found",
                        "stars_matched",
                        "rms_arcsec",
                        "sigma_arcsec",
                        "log_odds",
                        "seconds",
                        "notes");
    }

    @Test
    void text_isAFewLines() {
        String result = person.good(
                        "attitude", frame(), "--near", "pole", "--within", "25", "--site", "54.60,-2.90,240")
                .out();
        // Other tests check the figures; exponents and counts vary in length.
        assertThat(result.replaceAll("\\d+\\.\\d+", "#.#")
                        .replaceAll("\\d+", "#")
                        .replaceAll("\\s+", " "))
                .isEqualTo("frame.fits is centred on right ascension #h#m#.#s, declination +#°#′#″ (ICRS; #.#, +#.#"
                        + " degrees)"
                        + " ±#.#″. Up in the frame is position angle #.#° (from north through east). Field"
                        + " #.#° by #.#°, #″ per pixel."
                        + " It was at azimuth #.#° (north-north-east), #.#° up. # of # stars matched,"
                        + " #.#″ RMS. ");
    }

    @Test
    void siteAndTime_giveAzimuthAndAltitude() {
        JsonNode result = attitude("--near", "pole", "--within", "25", "--site", "54.60,-2.90,240");
        var seen = truth.attitude().boresight();
        assertThat(result.get("az_deg").doubleValue())
                .isCloseTo(Math.toDegrees(Math.atan2(seen.getX(), seen.getY())), within(0.01));
        assertThat(result.get("alt_apparent_deg").doubleValue())
                .isCloseTo(Math.toDegrees(Math.asin(seen.getZ())), within(0.01));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "--scale 20.6,3%",
                "--near polaris --within 30",
                "--near north-pole --within 30",
                "--near 70,70 --within 60 --mirrored no",
                "--focal-length 50 --pixel-size 5 --near pole --within 25",
            })
    void hints_areOptional(String hints) {
        assertMatchesTruth(attitude(hints.isEmpty() ? new String[0] : hints.split(" ", -1)));
    }

    @Test
    void positionInDegrees_isAccepted() {
        CatalogueStar centre = truth.centre();
        assertMatchesTruth(attitude(
                "--near",
                (centre.rightAscension().degrees() + 2) + ","
                        + (centre.declination().degrees() - 1),
                "--within",
                "3"));
    }

    @Test
    void wrongOptics_areDropped_andReported() {
        FrameFacts facts = picture.facts();
        FrameFacts wrong = new FrameFacts(
                facts.middle(),
                facts.localMiddle(),
                facts.exposure(),
                OptionalDouble.of(135),
                facts.pixelMicrons(),
                facts.camera());
        Path file = CameraEvening.write(folder.resolve("wrong.fits"), CameraEvening.with(picture, wrong));
        JsonNode result = person.good("attitude", file.toString(), "--near", "pole", "--within", "25", "--json")
                .json();
        assertMatchesTruth(result);
        assertThat(result.get("notes").get(0).textValue())
                .matches("NOTE  its focal length and pixel size give 7\\.64″ per pixel; the stars give 20\\.6\\d″\\.");
    }

    @Test
    void png_isDrawnWithFirstRowOnTop() throws IOException {
        BufferedImage image = new BufferedImage(picture.width(), picture.height(), BufferedImage.TYPE_USHORT_GRAY);
        for (int y = 0; y < picture.height(); y++) {
            for (int x = 0; x < picture.width(); x++) {
                int count = Math.round(picture.pixels()[y * picture.width() + x]);
                image.getRaster().setSample(x, y, 0, Math.max(0, count));
            }
        }
        Path png = folder.resolve("frame.png");
        ImageIO.write(image, "png", png.toFile());
        JsonNode result = person.good("attitude", png.toString(), "--near", "pole", "--within", "25", "--json")
                .json();
        assertMatchesTruth(result);
        assertThat(result.get("roll_deg").doubleValue()).isCloseTo(truth.roll().degrees(), within(0.02));
        assertThat(result.get("mirrored").booleanValue()).isFalse();
        assertThat(result.has("at")).isFalse();
    }

    /** FITS that does not state its row order is drawn with its first row at the bottom, so the view is mirrored. */
    @Test
    void fitsWithoutRowOrder_isDrawnFromTheBottomUp() throws IOException {
        String fits = Files.readString(Path.of(frame()), StandardCharsets.ISO_8859_1);
        assertThat(fits).contains("ROWORDER= 'TOP-DOWN'");
        Path file = CameraEvening.write(
                folder.resolve("bottom.fits"),
                fits.replace("ROWORDER= ", "COMMENT   ").getBytes(StandardCharsets.ISO_8859_1));
        JsonNode result = person.good("attitude", file.toString(), "--near", "pole", "--within", "25", "--json")
                .json();
        assertMatchesTruth(result);
        assertThat(result.get("mirrored").booleanValue()).isTrue();
        assertThat(result.get("roll_deg").doubleValue()).isCloseTo((truth.roll().degrees() + 180) % 360, within(0.02));
        assertMatchesTruth(person.good(
                        "attitude", file.toString(), "--near", "pole", "--within", "25", "--mirrored", "yes", "--json")
                .json());
    }

    @Test
    void wcsHeaderAndPicture_areWrittenToTheGivenFiles() throws IOException {
        Path wcs = folder.resolve("frame.wcs");
        Path drawn = folder.resolve("frame.png");
        String result = person.good(
                        "attitude",
                        frame(),
                        "--near",
                        "pole",
                        "--within",
                        "25",
                        "--wcs",
                        wcs.toString(),
                        "--picture",
                        drawn.toString())
                .out();
        assertThat(result).contains("Written: " + wcs + "\n").endsWith("Drawn: " + drawn + "\n");
        assertThat(Files.readString(wcs, StandardCharsets.US_ASCII))
                .hasSize((int) Files.size(wcs))
                .startsWith("SIMPLE  =                    T")
                .contains("NAXIS1  =                  640 ");
        assertThat(Files.size(wcs) % 2880).isZero();
        BufferedImage image = ImageIO.read(drawn.toFile());
        assertThat(image.getWidth()).isEqualTo(1200);
        assertThat(image.getHeight()).isBetween(950, 1200);
    }

    @Test
    void json_isTheOnlyOutput() {
        assertThat(person.good(
                                "attitude",
                                frame(),
                                "--near",
                                "pole",
                                "--within",
                                "25",
                                "--picture",
                                folder.resolve("p.png").toString(),
                                "--json")
                        .lines())
                .hasSize(1);
    }
}
