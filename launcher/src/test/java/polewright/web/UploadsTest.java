package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.operations.camera.CameraEvening;

/**
 * Uploaded files, valid and invalid: a valid file is accepted once and whole, and any other is refused with a reason.
 */
@Tag("slow")
class UploadsTest {
    private static final String BOUNDARY = "boundary-of-the-test";
    private static final String FRAME_KEY = "frame-of-the-test";
    private static final String NIGHT_KEY = "night-of-the-test";
    private static final int FITS_BLOCK = 2880;
    private static final Path LYING_HEADERS = Path.of("..", "image/src/test/resources/authorities/lying-headers");

    @TempDir
    private static Path taken;

    @TempDir
    private Path folder;

    private final HttpClient client = HttpClient.newHttpClient();
    private ServedNight night;

    @BeforeAll
    static void takeFrame() {
        CameraEvening.atLarkfell().take(taken.resolve("good.fits"));
    }

    @BeforeEach
    void beginNight() {
        night = new ServedNight(folder, "2026-11-25T20:10:00Z");
        assertThat(night.type("begin", "--site", "54.60,-2.90,240").isGood()).isTrue();
    }

    @AfterEach
    void close() {
        night.close();
    }

    private static byte[] frame() {
        try {
            return Files.readAllBytes(taken.resolve("good.fits"));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private HttpResponse<String> post(String path, BodyPublisher body) throws Exception {
        return client.send(
                HttpRequest.newBuilder(URI.create(night.address(path)))
                        .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
                        .header("Origin", night.address(""))
                        .POST(body)
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private static byte[] head(String key, String name) {
        return ("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"key\"\r\n\r\n" + key + "\r\n--" + BOUNDARY
                        + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"" + name
                        + "\"\r\nContent-Type: application/octet-stream\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] foot() {
        return ("\r\n--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.UTF_8);
    }

    private HttpResponse<String> send(String path, String key, String name, byte[] content) throws Exception {
        return post(path, BodyPublishers.ofByteArrays(List.of(head(key, name), content, foot())));
    }

    private List<String> saved() throws IOException {
        try (Stream<Path> files = Files.list(night.frames())) {
            return files.map(file -> file.getFileName().toString()).toList();
        }
    }

    private void assertStillServing() throws Exception {
        HttpResponse<String> now = client.send(
                HttpRequest.newBuilder(URI.create(night.address("/"))).build(), HttpResponse.BodyHandlers.ofString());
        assertThat(now.statusCode()).isEqualTo(200);
        assertThat(night.session().tonight().orElseThrow().lastSeq()).isEqualTo(1);
        assertThat(night.session().nights()).hasSize(1);
    }

    private static void assertRefused(HttpResponse<String> answer, int status, String sentence) {
        assertThat(answer.statusCode()).isEqualTo(status);
        assertThat(answer.body()).contains(sentence).doesNotContain("Exception", "/tmp/", "java.");
    }

    @Test
    void repeatedFrame_isSavedOnce() throws Exception {
        for (int time = 0; time < 3; time++) {
            HttpResponse<String> answer = send("/frames/upload", FRAME_KEY, "good.fits", frame());
            assertThat(answer.statusCode()).isEqualTo(303);
            assertThat(answer.headers().firstValue("Location")).hasValue("/frames");
        }
        assertThat(saved()).containsExactly("good-frame-of.fits");
        assertThat(Files.readAllBytes(night.frames().resolve("good-frame-of.fits")))
                .isEqualTo(frame());
    }

    @ParameterizedTest
    @MethodSource
    void fileName_neverLeavesTheFolder(String name, String kept) throws Exception {
        assertThat(send("/frames/upload", FRAME_KEY, name, frame()).statusCode())
                .isEqualTo(303);
        assertThat(saved()).containsExactly(kept);
    }

    static Stream<Arguments> fileName_neverLeavesTheFolder() {
        return Stream.of(
                Arguments.of("../../evil.fits", "evil-frame-of.fits"),
                Arguments.of("/etc/passwd", "passwd-frame-of"),
                Arguments.of("..\\\\..\\\\evil.fits", "evil-frame-of.fits"),
                Arguments.of(".hidden.fits", "hidden-frame-of.fits"),
                Arguments.of("...", "sent-frame-of"),
                Arguments.of("a b;c|d$(e).fits", "a-b-c-d-e-.fits".replace("-.fits", "--frame-of.fits")),
                Arguments.of("x".repeat(300) + ".fits", "x".repeat(55) + "-frame-of.fits"),
                // A long name is cut, possibly just after a dot or a hyphen.
                Arguments.of("a".repeat(20) + "." + "x".repeat(54) + ".fits", "x".repeat(54) + "-frame-of.fits"),
                Arguments.of("a".repeat(20) + "-.-" + "x".repeat(52) + ".fits", "x".repeat(52) + "-frame-of.fits"));
    }

    @Test
    void missingFolder_frameIsAcceptedOnceTheFolderIsBack() throws Exception {
        Path away = folder.resolve("away");
        Files.move(night.frames(), away);
        HttpResponse<String> refused = send("/frames/upload", FRAME_KEY, "good.fits", frame());
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.body())
                .contains(night.frames() + ", does not exist", "Reconnect it", "then send the frame again.")
                .doesNotContain("Exception", "java.", "has room");
        assertStillServing();
        Files.move(away, night.frames());
        assertThat(send("/frames/upload", FRAME_KEY, "good.fits", frame()).statusCode())
                .isEqualTo(303);
        assertThat(saved()).containsExactly("good-frame-of.fits");
    }

    @Test
    void fileInPlaceOfTheFolder_isReported() throws Exception {
        Files.delete(night.frames());
        Files.createFile(night.frames());
        HttpResponse<String> refused = send("/frames/upload", FRAME_KEY, "good.fits", frame());
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.body()).contains(night.frames() + ", does not exist").doesNotContain("has room");
        assertStillServing();
    }

    private static byte[] fits(String... cards) {
        StringBuilder header = new StringBuilder();
        for (String card : cards) {
            header.append(String.format(Locale.ROOT, "%-80s", card));
        }
        header.append(String.format(Locale.ROOT, "%-80s", "END"));
        byte[] file = new byte[2 * FITS_BLOCK];
        Arrays.fill(file, 0, FITS_BLOCK, (byte) ' ');
        byte[] text = header.toString().getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(text, 0, file, 0, text.length);
        return file;
    }

    private static byte[] fits(String width, String height) {
        return fits(
                "SIMPLE  =                    T",
                "BITPIX  =                   16",
                "NAXIS   =                    2",
                "NAXIS1  = " + width,
                "NAXIS2  = " + height);
    }

    /** White from edge to edge: a small file with more pixels than the limit. */
    private static byte[] hugePng() {
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.write(new BufferedImage(12_000, 6000, BufferedImage.TYPE_BYTE_BINARY), "png", bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    static Stream<Arguments> hostileFrames() {
        byte[] whole = frame();
        return Stream.of(
                Arguments.of("cut.fits", Arrays.copyOf(whole, whole.length / 2)),
                Arguments.of("head.fits", Arrays.copyOf(whole, 100)),
                Arguments.of("terabyte.fits", fits("1048576", "1048576")),
                Arguments.of("nan.fits", fits("NaN", "480")),
                Arguments.of("negative.fits", fits("-640", "480")),
                Arguments.of("none.fits", fits("0", "0")),
                Arguments.of("overflow.fits", fits("99999999999999999999", "2")),
                Arguments.of("thousandaxes.fits", fits("SIMPLE  = T", "BITPIX  = 16", "NAXIS   = 1000000000")),
                Arguments.of("bomb.png", hugePng()),
                Arguments.of("text.fits", "not a picture".getBytes(StandardCharsets.UTF_8)),
                Arguments.of("page.html", "<script>alert(1)</script>".getBytes(StandardCharsets.UTF_8)),
                Arguments.of("packed.fits.gz", new byte[] {0x1f, (byte) 0x8b, 8, 0, 0, 0, 0, 0, 0, 0}),
                Arguments.of("empty.fits", new byte[0]));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("hostileFrames")
    void invalidFrame_isRefusedWithAReason_andLeavesNoFile(String name, byte[] content) throws Exception {
        HttpResponse<String> answer = send("/frames/upload", FRAME_KEY, name, content);
        assertRefused(answer, 422, name + ":");
        assertThat(answer.body()).contains("role=\"alert\"").doesNotContain("<script>alert");
        assertThat(saved()).isEmpty();
        assertStillServing();
    }

    /** One of these once kept a server busy indefinitely, and no later frame was accepted. */
    @Test
    void falseHeader_isRefused_andTheNextFrameIsAccepted() throws Exception {
        for (String name : List.of("naxis-maxint.fits", "znaxis-maxint.fits", "ztile-2pow32.fits")) {
            HttpResponse<String> answer =
                    send("/frames/upload", FRAME_KEY, name, Files.readAllBytes(LYING_HEADERS.resolve(name)));
            assertRefused(answer, 422, name + ": its header says ");
        }
        assertThat(send("/frames/upload", FRAME_KEY, "good.fits", frame()).statusCode())
                .isEqualTo(303);
        assertThat(saved()).containsExactly("good-frame-of.fits");
    }

    @Test
    void oversizedUpload_isRefusedBeforeSending() throws Exception {
        HttpResponse<String> answer =
                post("/frames/upload", BodyPublishers.ofByteArray(new byte[(64 << 20) + 200_000]));
        assertRefused(answer, 413, "64 MiB");
        assertThat(saved()).isEmpty();
        assertStillServing();
    }

    @Test
    void oversizedUploadOfUnstatedLength_isRefused() throws Exception {
        InputStream endless = new InputStream() {
            private long left = (64L << 20) + 1;

            @Override
            public int read() {
                return left-- > 0 ? 0 : -1;
            }

            @Override
            public int read(byte[] into, int from, int most) {
                if (left <= 0) {
                    return -1;
                }
                int count = (int) Math.min(left, most);
                left -= count;
                return count;
            }
        };
        InputStream all = new SequenceInputStream(java.util.Collections.enumeration(List.of(
                new ByteArrayInputStream(head(FRAME_KEY, "much.fits")), endless, new ByteArrayInputStream(foot()))));
        HttpResponse<String> answer = post("/frames/upload", BodyPublishers.ofInputStream(() -> all));
        assertRefused(answer, 413, "64 MiB");
        assertThat(saved()).isEmpty();
        assertStillServing();
    }

    @Test
    void bodyThatIsNotAForm_isRefused() throws Exception {
        byte[] cut = Arrays.copyOf(head(FRAME_KEY, "a.fits"), 120);
        assertRefused(post("/frames/upload", BodyPublishers.ofByteArray(cut)), 400, "Send it again");
        assertRefused(post("/frames/upload", BodyPublishers.ofString("")), 400, "Send it again");
        assertRefused(send("/frames/upload", "short", "a.fits", frame()), 422, "submission key");
        assertRefused(send("/frames/upload", FRAME_KEY, "", new byte[0]), 422, "No file was chosen");
        assertThat(saved()).isEmpty();
        assertStillServing();
    }

    private static final String BEGUN = """
            {"seq":1,"at":"2026-11-24T20:00:00Z","kind":"begun"}
            """;

    static Stream<Arguments> hostileNights() {
        return Stream.of(
                Arguments.of("nothing", ""),
                Arguments.of("no JSON", "hello\n"),
                Arguments.of("an array", "[]\n"),
                Arguments.of("half a night", BEGUN),
                Arguments.of("deep", "{\"seq\":1,\"at\":" + "[".repeat(100_000) + "\n"),
                Arguments.of("deep and closed", "{\"a\":".repeat(50_000) + "1" + "}".repeat(50_000) + "\n"),
                Arguments.of("a long number", "{\"seq\":" + "9".repeat(100_000) + "}\n"),
                Arguments.of("a large number", "{\"seq\":1e999999999,\"at\":\"2026-11-24T20:00:00Z\"}\n"),
                Arguments.of("wrong types", "{\"seq\":\"one\",\"at\":7,\"kind\":{}}\n"),
                Arguments.of("NUL bytes", "{\"seq\":1,\0\0\0\"at\":\"2026-11-24T20:00:00Z\"}\n"),
                Arguments.of("only NUL bytes", "\0".repeat(10_000)),
                Arguments.of("a name twice", "{\"seq\":1,\"seq\":2,\"kind\":\"begun\"}\n"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("hostileNights")
    void invalidNight_isRefusedWithAReason_andTheLogIsUnchanged(String what, String content) throws Exception {
        HttpResponse<String> answer =
                send("/nights/upload", NIGHT_KEY, "night.jsonl", content.getBytes(StandardCharsets.UTF_8));
        assertRefused(answer, 422, "role=\"alert\"");
        assertThat(answer.body().length())
                .as("%s: no page full of what was sent", what)
                .isLessThan(10_000);
        assertStillServing();
    }

    @Test
    void invalidUtf8_isNotANight() throws Exception {
        byte[] bytes = {(byte) 0xc3, 0x28, (byte) 0xff, (byte) 0xfe, '\n'};
        assertRefused(send("/nights/upload", NIGHT_KEY, "night.jsonl", bytes), 422, "not text in UTF-8");
        assertStillServing();
    }

    @Test
    void oversizedNight_isRefused() throws Exception {
        byte[] much = new byte[(8 << 20) + 1];
        assertRefused(send("/nights/upload", NIGHT_KEY, "night.jsonl", much), 413, "8 MiB");
        assertStillServing();
    }

    @Test
    void repeatedNight_isAddedOnce() throws Exception {
        Path file = folder.resolve("night.jsonl");
        assertThat(night.type("log", "export", file.toString()).isGood()).isTrue();
        for (int time = 0; time < 2; time++) {
            HttpResponse<String> answer = send("/nights/upload", NIGHT_KEY, "night.jsonl", Files.readAllBytes(file));
            assertThat(answer.statusCode()).isEqualTo(303);
            assertThat(answer.headers().firstValue("Location")).hasValue("/nights?night=2");
        }
        assertThat(night.session().nights()).hasSize(2);
    }
}
