package polewright.web.access;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.decoder.Decoder;
import io.javalin.Javalin;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.device.PairedDevices;

/** Sends raw requests to a real server. "larkfell" is the machine's name on the network. */
@Tag("slow")
class AccessControlTest {
    @TempDir
    private Path folder;

    private AccessControl door;
    private Javalin server;

    @BeforeEach
    void opens() {
        AccessSettings settings = new AccessSettings(
                Set.of("larkfell.local"),
                new PairedDevices(folder),
                Clock.systemUTC(),
                Set.of(),
                Set.of(),
                Duration.ofSeconds(2));
        door = new AccessControl(settings, complaint -> "<p>pair " + complaint);
        server = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            door.install(config);
            config.routes.get("/", ctx -> ctx.result("inside"));
            config.routes.post("/do", ctx -> ctx.result("done"));
        });
        server.start("127.0.0.1", 0);
    }

    @AfterEach
    void closes() {
        server.stop();
    }

    private String raw(String head) throws IOException {
        return sent(head.replace("PORT", Integer.toString(server.port())).replace("\n", "\r\n"));
    }

    private String sent(String bytes) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(bytes.getBytes(UTF_8));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), UTF_8);
        }
    }

    private String get(String host, String more) throws IOException {
        return raw("GET / HTTP/1.1\nHost: " + host + "\nConnection: close\n" + more + "\n");
    }

    @Test
    void loopback_isAdmittedWithGuardHeaders() throws IOException {
        assertThat(get("127.0.0.1:PORT", ""))
                .contains(" 200 ", "inside", "frame-ancestors 'none'", "nosniff", "no-store");
        assertThat(get("LOCALHOST:PORT", "")).contains(" 200 ");
    }

    @Test
    void unknownHostName_isRefused() throws IOException {
        assertThat(get("example.org:PORT", "")).contains(" 421 ").doesNotContain("inside");
        assertThat(get("127.0.0.1.:PORT", "")).doesNotContain("inside");
        assertThat(get("127.0.0.1:1", "")).contains(" 421 ");
        assertThat(get("127.0.0.1:PORT", "Host: example.org\n")).doesNotContain("inside");
        assertThat(raw("GET / HTTP/1.0\n\n")).doesNotContain("inside");
        assertThat(raw("GET http://example.org/ HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\n\n"))
                .doesNotContain("inside");
    }

    @Test
    void write_onlyFromOwnOrigin() throws IOException {
        String post = "POST /do HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\nContent-Length: 0\n";
        assertThat(raw(post + "Origin: http://127.0.0.1:PORT\n\n")).contains("done");
        assertThat(raw(post + "Sec-Fetch-Site: same-origin\n\n")).contains("done");
        assertThat(raw(post + "\n")).contains(" 403 ");
        assertThat(raw(post + "Origin: null\n\n")).contains(" 403 ");
        assertThat(raw(post + "Origin: http://example.org\n\n")).contains(" 403 ");
    }

    @Test
    void device_pairsOnceByCode_thenIsAdmittedByCookie() throws IOException {
        assertThat(get("larkfell.local:PORT", "")).contains(" 401 ").doesNotContain("inside");
        String body = "code=" + door.code().grouped() + "&name=Tent";
        String post = "POST /pair HTTP/1.1\nHost: larkfell.local:PORT\nConnection: close\n"
                + "Origin: http://larkfell.local:PORT\nContent-Type: application/x-www-form-urlencoded\n"
                + "Content-Length: " + body.length() + "\n\n" + body;
        String welcome = raw(post);
        assertThat(welcome).contains(" 303 ", "HttpOnly; SameSite=Strict", "Path=/");
        assertThat(raw(post)).contains(" 403 ", "no longer valid");
        String cookie = welcome.split("polewright=", 2)[1].split(";", 2)[0];
        assertThat(get("larkfell.local:PORT", "Cookie: polewright=" + cookie + "\n"))
                .contains("inside");
        assertThat(Files.readString(folder.resolve(PairedDevices.FILE)))
                .contains("Tent")
                .doesNotContain(cookie);
        Files.writeString(folder.resolve(PairedDevices.FILE), "{");
        assertThat(get("larkfell.local:PORT", "Cookie: polewright=" + cookie + "\n"))
                .contains(" 503 ", "damaged");
        new PairedDevices(folder).revokeAll();
        assertThat(get("larkfell.local:PORT", "Cookie: polewright=" + cookie + "\n"))
                .contains(" 401 ");
    }

    @Test
    void fiveWrongGuesses_voidTheCode() {
        PairingCode code = PairingCode.fresh(Clock.systemUTC());
        for (int i = 0; i < 5; i++) {
            code.guess("wrong", "address " + i);
        }
        assertThat(code.isVoid()).isTrue();
        assertThat(code.guess(code.grouped(), "another")).isEqualTo(PairingCode.Answer.VOID);
    }

    @Test
    void slowClient_isCutOffWhileOthersAreServed() throws Exception {
        try (Socket slow = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
            boolean isCut = false;
            for (int i = 0; i < 20 && !isCut; i++) {
                try {
                    slow.getOutputStream().write('G');
                    assertThat(get("127.0.0.1:PORT", "")).contains("inside");
                } catch (IOException e) {
                    isCut = true;
                }
                Thread.sleep(500);
            }
            assertThat(isCut).isTrue();
        }
    }

    @Test
    void qrCode_decodesOnDarkAndLightBackground() throws Exception {
        String url = "http://192.0.2.7:8080/pair#ABCD-2345";
        for (boolean dark : new boolean[] {false, true}) {
            List<String> lines = TerminalQr.lines(url, dark);
            int size = lines.get(0).length() - 8;
            BitMatrix bits = new BitMatrix(size);
            for (int y = 0; y < size; y++) {
                for (int x = 0; x < size; x++) {
                    char printed = lines.get((y + 4) / 2).charAt(x + 4);
                    boolean isInk = printed == '█' || printed == (y % 2 == 0 ? '▀' : '▄');
                    if (isInk != dark) {
                        bits.set(x, y);
                    }
                }
            }
            assertThat(new Decoder().decode(bits).getText()).isEqualTo(url);
        }
    }
}
