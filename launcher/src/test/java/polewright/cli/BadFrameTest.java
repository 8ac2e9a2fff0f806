package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.image.Frame;
import polewright.image.FrameFacts;
import polewright.operations.CommandRun;
import polewright.operations.CommandRun.Outcome;
import polewright.operations.camera.CameraEvening;

/** Unusable frames: one clear line each, exit status 1, in bounded time, and the night unchanged. */
class BadFrameTest {
    /** Generous on any machine that can run these tests; without a limit a search could run for hours. */
    private static final Duration BOUND = Duration.ofSeconds(90);

    @TempDir
    private static Path frames;

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeAll
    static void takeFrames() throws IOException {
        CameraEvening evening = CameraEvening.atLarkfell();
        evening.take(frames.resolve("good.fits"));
        evening.waitSeconds(60);
        evening.take(frames.resolve("unturned.fits"));
        evening.turnRightAscension(30);
        evening.waitSeconds(86_400);
        evening.take(frames.resolve("next-night.fits"));
        evening.turnRightAscension(30);
        CameraEvening.write(
                frames.resolve("timeless.fits"),
                CameraEvening.with(evening.take().frame(), FrameFacts.NONE));
        byte[] whole = Files.readAllBytes(frames.resolve("good.fits"));
        CameraEvening.write(frames.resolve("truncated.fits"), Arrays.copyOf(whole, whole.length / 2));
        CameraEvening.write(frames.resolve("no-image.fits"), header("BITPIX  = 8", "NAXIS   = 0"));
        CameraEvening.write(
                frames.resolve("huge.fits"),
                header("BITPIX  = 16", "NAXIS   = 2", "NAXIS1  = 50000", "NAXIS2  = 20000"));
        CameraEvening.write(frames.resolve("black.fits"), even(0));
        CameraEvening.write(frames.resolve("white.fits"), even(65_535));
        CameraEvening.write(frames.resolve("words.fits"), "not a frame".getBytes(StandardCharsets.UTF_8));
        CameraEvening.write(frames.resolve("empty.fits"), new byte[0]);
        ImageIO.write(cat(), "jpg", frames.resolve("cat.jpg").toFile());
    }

    private static byte[] header(String... cards) {
        StringBuilder text = new StringBuilder(String.format("%-80s", "SIMPLE  =                    T"));
        for (String card : cards) {
            String[] parts = card.split("=", -1);
            text.append(String.format("%-80s", parts[0] + "= " + String.format("%20s", parts[1].strip())));
        }
        text.append(String.format("%-80s", "END"));
        return String.format("%-2880s", text).getBytes(StandardCharsets.US_ASCII);
    }

    private static Frame even(float level) {
        float[] pixels = new float[640 * 480];
        Arrays.fill(pixels, level);
        FrameFacts facts = new FrameFacts(
                Optional.of(Instant.parse("2026-11-25T20:00:00Z")),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        return new Frame(640, 480, pixels, Float.POSITIVE_INFINITY, facts);
    }

    /** Round eyes and fur: bright blobs and texture, in colour, but no sky. */
    private static BufferedImage cat() {
        BufferedImage cat = new BufferedImage(1280, 960, BufferedImage.TYPE_INT_RGB);
        Graphics2D canvas = cat.createGraphics();
        canvas.setColor(new Color(0xb0, 0xc8, 0xd8));
        canvas.fillRect(0, 0, 1280, 960);
        canvas.setColor(new Color(0xc8, 0x80, 0x40));
        canvas.fillOval(340, 260, 600, 560);
        canvas.fillPolygon(new int[] {380, 440, 600}, new int[] {420, 180, 300}, 3);
        canvas.fillPolygon(new int[] {900, 840, 680}, new int[] {420, 180, 300}, 3);
        canvas.setColor(new Color(0x30, 0x90, 0x40));
        canvas.fillOval(480, 440, 100, 80);
        canvas.fillOval(700, 440, 100, 80);
        canvas.setColor(Color.WHITE);
        canvas.fillOval(515, 455, 14, 14);
        canvas.fillOval(735, 455, 14, 14);
        Random fur = new Random(4);
        for (int i = 0; i < 30_000; i++) {
            int shade = 120 + fur.nextInt(100);
            canvas.setColor(new Color(shade, shade * 2 / 3, shade / 3));
            int x = 350 + fur.nextInt(580);
            int y = 270 + fur.nextInt(540);
            canvas.drawLine(x, y, x + fur.nextInt(9) - 4, y + fur.nextInt(9));
        }
        canvas.dispose();
        return cat;
    }

    @BeforeEach
    void logOneSighting() {
        person = new CommandRun(folder, "2026-11-25T20:10:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
        person.good("sight", "compass", "3");
    }

    private static String file(String name) {
        return frames.resolve(name).toString();
    }

    private Outcome refused(String... typed) {
        String before = person.good("log", "--json").out();
        Outcome outcome = assertTimeoutPreemptively(BOUND, () -> person.run(typed));
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err().lines()).hasSize(1);
        assertThat(outcome.err()).doesNotContain("Exception", "internal error");
        assertThat(person.good("log", "--json").out()).isEqualTo(before);
        return outcome;
    }

    private void assertRefused(String name, String complaint) {
        assertThat(refused("attitude", file(name)).err()).isEqualTo("polewright attitude: " + complaint + "\n");
        assertThat(refused("sight", "frames", file(name), file("good.fits")).err())
                .isEqualTo("polewright sight frames: " + complaint + "\n");
    }

    @Test
    void truncatedFile_isRefused() {
        assertThat(refused("attitude", file("truncated.fits")).err())
                .startsWith("polewright attitude: truncated.fits: ")
                .contains("only 306720 are present. Wait until it is fully saved");
    }

    @Test
    void fitsWithoutImage_isRefused() {
        assertThat(refused("attitude", file("no-image.fits")).err())
                .startsWith("polewright attitude: no-image.fits: ")
                .contains("no image");
    }

    @Test
    void headerClaimingABillionPixels_isRefused() {
        assertThat(refused("attitude", file("huge.fits")).err()).startsWith("polewright attitude: huge.fits: ");
    }

    @Test
    void cat_isRefused() {
        assertThat(refused("attitude", file("cat.jpg")).err())
                .matches("polewright attitude: cat\\.jpg: (it shows .*stars?"
                        + "|the stars found on it \\(\\d+\\) do not match any stars of the sky)\\. .*\\.\n");
    }

    @Test
    void allBlack_isRefused() {
        assertRefused("black.fits", "black.fits: it shows no stars. Expose longer, focus, or take the cap off.");
    }

    @Test
    void allWhite_isRefused() {
        assertThat(refused("attitude", file("white.fits")).err())
                .startsWith("polewright attitude: white.fits: ")
                .contains("no stars");
    }

    @Test
    void otherFile_isRefused() {
        assertThat(refused("attitude", file("words.fits")).err())
                .startsWith("polewright attitude: words.fits: this is not a supported image. ");
        assertThat(refused("attitude", file("empty.fits")).err())
                .startsWith("polewright attitude: empty.fits: the file is empty. ");
        assertThat(refused("attitude", file("missing.fits")).err())
                .isEqualTo("polewright attitude: " + file("missing.fits")
                        + " does not exist. Check the name and the folder.\n");
        assertThat(refused("attitude", frames.toString()).err())
                .isEqualTo("polewright attitude: " + frames
                        + " is a folder. Name the frame's file; a folder is for polewright watch.\n");
    }

    @Test
    void singleFrame_isRefused() {
        assertThat(refused("axis", file("good.fits"), "--site", "54.60,-2.90,240", "--near", "pole", "--within", "25")
                        .err())
                .isEqualTo("polewright axis: one frame alone does not give the axis. Turn right ascension by 30 to 90"
                        + " degrees, nothing else, and take another.\n");
    }

    @Test
    void framesOfTwoNights_areRefused() {
        for (List<String> command : List.of(List.of("axis"), List.of("sight", "frames"))) {
            assertThat(refusedPair(command, "next-night.fits").err())
                    .isEqualTo("polewright " + String.join(" ", command) + ": two frames are 24 hours apart"
                            + " (2026-11-25T20:00:00Z and 2026-11-26T20:02:00Z). Give frames of one night, with only"
                            + " right ascension turned between them.\n");
        }
    }

    @Test
    void framesWithoutRotation_areRefused() {
        for (List<String> command : List.of(List.of("axis"), List.of("sight", "frames"))) {
            assertThat(refusedPair(command, "unturned.fits").err())
                    .isEqualTo("polewright " + String.join(" ", command) + ": there is no rotation between the frames"
                            + " (0.38 degrees). Turn right ascension by 30 to 90 degrees between them.\n");
        }
    }

    @Test
    void frameWithoutTime_isRefused() {
        assertThat(refusedPair(List.of("axis"), "timeless.fits").err())
                .isEqualTo("polewright axis: timeless.fits does not say when it was taken. Give the middle of the"
                        + " exposure with --at, such as --at 2026-11-25T20:00Z.\n");
    }

    @Test
    void siteOrTimeWithStarsBelowTheHorizon_isRefused() {
        assertThat(refused(
                                "axis",
                                file("good.fits"),
                                file("unturned.fits"),
                                "--site",
                                "-43.95,170.40",
                                "--near",
                                "north pole",
                                "--within",
                                "25")
                        .err())
                .startsWith("polewright axis: good.fits: the stars on this frame were below the horizon at"
                        + " 2026-11-25T20:00:00Z. Check the time");
    }

    private Outcome refusedPair(List<String> command, String second) {
        List<String> typed = new java.util.ArrayList<>(command);
        typed.addAll(List.of(file("good.fits"), file(second), "--near", "pole", "--within", "25"));
        return refused(typed.toArray(String[]::new));
    }
}
