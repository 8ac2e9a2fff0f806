package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.web.access.Admission;
import polewright.web.access.OpenStreams;

/**
 * Access limits for unpaired devices, and limits that apply to all. Requests are raw bytes on a socket, because a
 * client library would correct their errors. The rules are those of RFC 9110 (Host, Origin by the Fetch standard,
 * status codes) and RFC 9112 (request syntax).
 */
@Tag("slow")
class StrangersAtTheDoorTest {
    private static final String SHARED = KnockedDoor.SHARED;

    @TempDir
    private Path folder;

    private KnockedDoor server;

    @BeforeEach
    void open() {
        server = new KnockedDoor(folder);
    }

    @AfterEach
    void close() {
        server.close();
    }

    private static String path(String route) {
        return route.substring(route.indexOf(' ') + 1).replaceAll("\\{[^}]*}", "page.js");
    }

    private static String method(String route) {
        return route.substring(0, route.indexOf(' '));
    }

    private static String post(String host, String path, String more) {
        return "POST " + path + " HTTP/1.1\nHost: " + host + ":PORT\nConnection: close\nContent-Length: 0\n" + more
                + "\n";
    }

    private static String head(String answer) {
        return answer.substring(0, Math.max(0, answer.indexOf("\r\n\r\n")));
    }

    private static void assertSecurityHeaders(String answer) {
        assertThat(head(answer))
                .contains(
                        "Content-Security-Policy: default-src 'none'",
                        "X-Content-Type-Options: nosniff",
                        "frame-ancestors 'none'",
                        "Cache-Control: no-store");
        assertThat(answer).doesNotContain("Jetty", "jetty", "Exception", "Caused by", "Javalin");
    }

    @Test
    void unpairedDevice_reachesOnlyThePairingPage() throws IOException {
        List<String> routes = server.routes();
        assertThat(routes)
                .contains(
                        "GET /",
                        "GET /changes",
                        "GET /clock",
                        "POST /palette",
                        "GET /practice",
                        "GET /practice/night/changes");
        List<String> got = new ArrayList<>();
        for (String route : routes) {
            for (String method : Set.of(method(route), "HEAD", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE")) {
                int status = server.status(method + " " + path(route) + " HTTP/1.1\nHost: " + SHARED
                        + ":PORT\nConnection: close\nContent-Length: 0\nOrigin: http://" + SHARED + ":PORT\n\n");
                if (status < 400) {
                    got.add(method + " " + path(route));
                }
            }
        }
        assertThat(got).containsOnly("GET /pair", "HEAD /pair");
        for (String open : PageServer.OPEN) {
            assertThat(server.get(SHARED, open, "")).contains(" 200 ");
        }
        assertThat(PageServer.OPEN)
                .containsExactlyInAnyOrder("/static/page.css", "/static/pair.js", "/static/icon.svg");
        for (String unknown : List.of("/nowhere", "/pair/", "/PAIR", "/static/", "/static/page.js", "/favicon.ico")) {
            assertThat(server.get(SHARED, unknown, "Accept: text/html\n"))
                    .as(unknown)
                    .contains(" 401 ", "Pair this device");
        }
        assertSecurityHeaders(server.get(SHARED, "/", ""));
    }

    @Test
    void pairedDevice_reachesEveryRoute_andARevokedOneDoesNot() throws IOException {
        String cookie = server.pairedCookie();
        assertThat(server.get(SHARED, "/", cookie)).contains(" 200 ");
        assertThat(server.status("GET /changes HTTP/1.1\nHost: " + SHARED + ":PORT\n" + cookie + "\n"))
                .isEqualTo(200);
        server.devices().revokeAll();
        assertThat(server.get(SHARED, "/", cookie)).contains(" 401 ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "example.org:PORT",
                "127.0.0.1.example.org:PORT",
                "127.0.0.1:1",
                "127.0.0.1",
                "127.0.0.1.:PORT",
                "localhost.:PORT",
                "[::2]:PORT",
                "[::ffff:127.0.0.1]:PORT",
                "2130706433:PORT",
                "0x7f.1:PORT",
                "user@127.0.0.1:PORT",
                "127.0.0.1:PORT, example.org",
                "127.0.0.1:PORT/",
                "",
            })
    void foreignHost_isRefused(String host) throws IOException {
        String answer = server.raw("GET / HTTP/1.1\nHost: " + host + "\nConnection: close\n\n");
        assertThat(answer).containsPattern("^HTTP/1.1 4(00|21) ").doesNotContain("<html");
        assertSecurityHeaders(answer);
    }

    @Test
    void request_mustNameExactlyOneHost() throws IOException {
        for (String request : List.of(
                "GET / HTTP/1.0\n\n",
                "GET / HTTP/1.1\nConnection: close\n\n",
                "GET / HTTP/1.1\nHost: 127.0.0.1:PORT\nHost: 127.0.0.1:PORT\nConnection: close\n\n",
                "GET http://example.org/ HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\n\n",
                "GET http://example.org:PORT/ HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\n\n",
                "OPTIONS * HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\n\n",
                "CONNECT example.org:80 HTTP/1.1\nHost: example.org:80\nConnection: close\n\n",
                "GET /\n\n",
                "nonsense\n\n")) {
            String answer = server.raw(request);
            assertThat(answer).as(request).doesNotContain("<html").containsPattern("^(HTTP/1.1 [45]\\d\\d |$)");
            if (!answer.isEmpty()) {
                assertSecurityHeaders(answer);
            }
        }
        assertThat(server.raw("GET / HTTP/1.0\nHost: 127.0.0.1:PORT\n\n")).contains(" 200 ");
        assertThat(server.get("LocalHost", "/", "")).contains(" 200 ");
        assertThat(server.get(SHARED.toUpperCase(java.util.Locale.ROOT), "/", server.pairedCookie()))
                .contains(" 200 ");
    }

    @Test
    void crossSiteWrites_areRefusedOnEveryRoute() throws IOException {
        List<String> writing = server.routes().stream()
                .filter(route -> !route.startsWith("GET "))
                .toList();
        assertThat(writing).hasSizeGreaterThan(20);
        String cookie = server.pairedCookie();
        for (String route : writing) {
            for (String from : List.of(
                    "",
                    "Origin: null\n",
                    "Origin: http://example.org\n",
                    "Origin: https://127.0.0.1:PORT\n",
                    "Origin: http://127.0.0.1:1\n",
                    "Origin: http://127.0.0.1\n",
                    "Origin: http://127.0.0.1:PORT.example.org\n",
                    "Origin: http://127.0.0.1:PORT\nOrigin: http://example.org\n",
                    "Referer: http://127.0.0.1:PORT/\n",
                    "Sec-Fetch-Site: cross-site\n",
                    "Sec-Fetch-Site: same-site\n")) {
                assertThat(server.status(post("127.0.0.1", path(route), from + cookie)))
                        .as(route + " " + from)
                        .isEqualTo(403);
            }
        }
        assertThat(server.session().eventCount()).isZero();
        // Another site may link here, but nothing more.
        assertThat(server.get("127.0.0.1", "/", "Sec-Fetch-Site: cross-site\n")).contains(" 200 ");
        assertThat(server.get("127.0.0.1", "/fix", "Sec-Fetch-Site: cross-site\n"))
                .contains(" 403 ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/static/../page.css",
                "/static/../../../../etc/passwd",
                "/static/%2e%2e/%2e%2e/etc/passwd",
                "/static/..%2f..%2fetc%2fpasswd",
                "/static/%2fetc%2fpasswd",
                "/static/..\\..\\etc\\passwd",
                "/static/..%5c..%5cetc%5cpasswd",
                "/static/%252e%252e%252fetc%252fpasswd",
                "/static//etc/passwd",
                "//etc/passwd",
                "/static/page.css/../../etc/passwd",
                "/static/..;/..;/etc/passwd",
                "/static/page.js;jsessionid=1",
                "/;a=b/fix",
                "/static/page.css%00.js",
                "/static/page.css%0d%0aSet-Cookie:a=b",
                "/static/%c0%ae%c0%ae/etc/passwd",
                "/static/%",
                "/static/META-INF/MANIFEST.MF",
                "/META-INF/MANIFEST.MF",
                "/WEB-INF/web.xml",
                "/webjars/htmx.org/2.0.10/dist/htmx.min.js",
            })
    void unlistedFiles_areNeverServed(String address) throws IOException {
        for (String host : List.of("127.0.0.1", SHARED)) {
            String answer = server.get(host, address, "");
            assertThat(answer).containsPattern("^HTTP/1.1 4(00|01|04) ").doesNotContain("root:", "Manifest-Version");
            assertThat(head(answer)).doesNotContain("a=b");
            assertSecurityHeaders(answer);
        }
    }

    @Test
    void oversizedRequests_areRefusedInASentence() throws IOException {
        String longHead = server.get("127.0.0.1", "/", "X-Much: " + "a".repeat(8 * 1024) + "\n");
        assertThat(longHead).contains(" 431 ", "too long");
        assertSecurityHeaders(longHead);
        String longAddress = server.get("127.0.0.1", "/?" + "a".repeat(9 * 1024), "");
        assertThat(longAddress).containsPattern(" 4(14|31) ").contains("too long");
        assertSecurityHeaders(longAddress);
        String ours = "Origin: http://127.0.0.1:PORT\nContent-Type: application/x-www-form-urlencoded\n";
        String longForm = server.raw("POST /palette HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\n" + ours
                + "Content-Length: " + (Admission.FORM_BYTES + 1) + "\n\n");
        assertThat(longForm).contains(" 413 ", "64 KiB");
        assertSecurityHeaders(longForm);
        String chunked = server.raw("POST /palette HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\n" + ours
                + "Transfer-Encoding: chunked\n\n5\nx=abc\n0\n\n");
        assertThat(chunked).contains(" 411 ");
        assertSecurityHeaders(chunked);
        String both = server.raw("POST /palette HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\n" + ours
                + "Content-Length: 3\nTransfer-Encoding: chunked\n\n0\n\n");
        assertThat(both).containsPattern("^HTTP/1.1 4(00|11) ");
        assertThat(server.get("127.0.0.1", "/", "")).contains(" 200 ");
    }

    @Test
    void oversizedUpload_receivesTheReasonWhileSending() throws Exception {
        int length = (int) Admission.FORM_BYTES + 60_000;
        String head = "POST /palette HTTP/1.1\nHost: 127.0.0.1:PORT\nOrigin: http://127.0.0.1:PORT\n"
                + "Content-Type: application/x-www-form-urlencoded\nContent-Length: " + length + "\n\n";
        try (Socket socket = server.socket()) {
            OutputStream out = socket.getOutputStream();
            out.write(server.bytes(head));
            // As over Wi-Fi: the refusal arrives long before the upload is complete.
            byte[] part = "a".repeat(length / 4).getBytes(StandardCharsets.US_ASCII);
            for (int sent = 0; sent < 4; sent++) {
                out.write(part);
                out.flush();
                Thread.sleep(400);
            }
            assertThat(KnockedDoor.status(socket)).isEqualTo(413);
        }
    }

    /** Sends one byte at a time, often enough to keep the connection from becoming idle. */
    private boolean isCut(Socket socket, OutputStream out, Duration within) throws Exception {
        long until = System.nanoTime() + within.toNanos();
        socket.setSoTimeout(100);
        while (System.nanoTime() < until) {
            try {
                out.write('a');
                out.flush();
                if (socket.getInputStream().read() < 0) {
                    return true;
                }
            } catch (SocketTimeoutException stillOpen) {
                assertThat(server.status("GET /clock HTTP/1.1\nHost: 127.0.0.1:PORT\nConnection: close\n\n"))
                        .isEqualTo(200);
            } catch (SocketException closed) {
                return true;
            }
        }
        return false;
    }

    @Test
    void slowClient_isDisconnected_whileOthersAreServed() throws Exception {
        Duration within = KnockedDoor.PATIENCE.multipliedBy(6);
        String kept = "GET /clock HTTP/1.1\nHost: 127.0.0.1:PORT\n\n";
        try (Socket first = server.socket()) {
            first.getOutputStream().write(server.bytes("GET / HTTP/1.1\nX-Slow: "));
            assertThat(isCut(first, first.getOutputStream(), within))
                    .as("a first head")
                    .isTrue();
        }
        try (Socket later = server.socket()) {
            later.getOutputStream().write(server.bytes(kept));
            assertThat(KnockedDoor.status(later)).isEqualTo(200);
            later.getOutputStream().write(server.bytes("GET / HTTP/1.1\nX-Slow: "));
            assertThat(isCut(later, later.getOutputStream(), within))
                    .as("a later head")
                    .isTrue();
        }
        try (Socket body = server.socket()) {
            body.getOutputStream().write(server.bytes("""
                            POST /palette HTTP/1.1
                            Host: 127.0.0.1:PORT
                            Origin: http://127.0.0.1:PORT
                            Content-Type: application/x-www-form-urlencoded
                            Content-Length: 60000

                            """));
            assertThat(isCut(body, body.getOutputStream(), within)).as("a body").isTrue();
        }
    }

    @Test
    void oneAddress_cannotHoldAllConnections() throws IOException {
        List<Socket> context = new ArrayList<>();
        try {
            for (int i = 0; i < 250; i++) {
                context.add(server.socket("127.0.0.2"));
            }
            assertThat(server.get("127.0.0.1", "/clock", "")).contains(" 200 ");
        } finally {
            for (Socket socket : context) {
                socket.close();
            }
        }
    }

    private Socket stream(String cookie) throws IOException {
        Socket socket = server.socket();
        socket.getOutputStream()
                .write(server.bytes("GET /changes HTTP/1.1\nHost: " + SHARED + ":PORT\n" + cookie + "\n"));
        assertThat(KnockedDoor.status(socket)).isEqualTo(200);
        return socket;
    }

    @Test
    void tooManyStreams_closeTheDevicesOldest() throws IOException {
        String cookie = server.pairedCookie();
        List<Socket> streams = new ArrayList<>();
        try {
            for (int i = 0; i < OpenStreams.MOST_OF_A_DEVICE + 1; i++) {
                streams.add(stream(cookie));
            }
            assertThat(streams.get(0).getInputStream().readAllBytes()).isNotEmpty();
            assertThat(server.get(SHARED, "/clock", cookie)).contains(" 200 ");
            try (Socket another = stream(server.pairedCookie())) {
                assertThat(another.getInputStream().read()).isPositive();
            }
        } finally {
            for (Socket socket : streams) {
                socket.close();
            }
        }
    }

    @Test
    void streamOfARevokedDevice_isClosed() throws IOException {
        try (Socket stream = stream(server.pairedCookie())) {
            server.devices().revokeAll();
            assertThat(new String(stream.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
                    .doesNotContain("still here");
        }
    }
}
