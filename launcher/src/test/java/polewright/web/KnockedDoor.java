package polewright.web;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import polewright.alignment.camera.Drive;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameClues;
import polewright.operations.device.PairedDevices;
import polewright.operations.watch.SettableClock;
import polewright.web.access.AccessControl;
import polewright.web.access.AccessSettings;
import polewright.web.access.ServerCertificate;
import polewright.web.session.FrameSource;
import polewright.web.session.NightSession;

/** The complete server, shared under the name larkfell.local, tested with raw bytes. */
final class KnockedDoor implements AutoCloseable {
    /** The machine's name on the network: a client that uses it counts as another device, wherever it runs. */
    static final String SHARED = "larkfell.local";

    static final Duration PATIENCE = Duration.ofSeconds(2);

    private final AccessControl accessControl;
    private final PairedDevices devices;
    private final NightSession session;
    private final PageServer server;

    KnockedDoor(Path folder) {
        this(folder, false);
    }

    /** The same with --secure. */
    KnockedDoor(Path folder, boolean secure) {
        Workbench bench = new Workbench(
                new SettableClock(Instant.parse("2026-11-26T20:00:00Z")),
                Map.of(
                        "POLEWRIGHT_LOG", folder.resolve("nights.sqlite").toString(),
                        "XDG_DATA_HOME", folder.resolve("data").toString()),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL);
        session = NightSession.of("", bench)
                .watching(
                        FrameSource.sent(folder.resolve("frames"), FrameClues.NONE, Drive.NOT_TOLD), Clock.systemUTC());
        NightSession practice = PracticeSession.of(bench, Clock.systemUTC());
        devices = new PairedDevices(bench.dataFolder());
        AccessSettings plain = new AccessSettings(
                Set.of(SHARED), devices, Clock.systemUTC(), PageServer.OPEN, PageServer.UPLOADS, PATIENCE);
        accessControl = new AccessControl(
                secure
                        ? plain.with(ServerCertificate.in(
                                bench.dataFolder(),
                                plain.names(),
                                Clock.systemUTC().instant()))
                        : plain,
                PageServer::pairingPage);
        server = PageServer.start(List.of(session, practice), accessControl, "127.0.0.1", 0);
    }

    int port() {
        return server.port();
    }

    List<String> routes() {
        return server.routes();
    }

    PairedDevices devices() {
        return devices;
    }

    AccessControl accessControl() {
        return accessControl;
    }

    NightSession session() {
        return session;
    }

    /** The cookie of a paired device. */
    String pairedCookie() {
        return "Cookie: " + AccessControl.COOKIE + "="
                + devices.pair("Tent", Instant.parse("2026-11-26T20:00:00Z")).token() + "\n";
    }

    Socket socket() throws IOException {
        return socket("127.0.0.1");
    }

    /** From one of the loopback addresses, all of which belong to this machine on Linux. */
    Socket socket(String from) throws IOException {
        Socket socket = new Socket();
        socket.bind(new InetSocketAddress(InetAddress.getByName(from), 0));
        socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), server.port()));
        socket.setSoTimeout(20_000);
        return socket;
    }

    /** The bytes of a request, with PORT replaced by the port and line ends by CR LF. */
    byte[] bytes(String request) {
        return request.replace("PORT", Integer.toString(server.port()))
                .replace("\n", "\r\n")
                .getBytes(ISO_8859_1);
    }

    /** The response up to the end of the connection. */
    String raw(String request) throws IOException {
        try (Socket socket = socket()) {
            socket.getOutputStream().write(bytes(request));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), ISO_8859_1);
        }
    }

    /** The status code; for a stream too, without waiting for its end. */
    int status(String request) throws IOException {
        try (Socket socket = socket()) {
            socket.getOutputStream().write(bytes(request));
            socket.getOutputStream().flush();
            return status(socket);
        }
    }

    static int status(Socket socket) throws IOException {
        byte[] line = socket.getInputStream().readNBytes("HTTP/1.1 200".length());
        return line.length < 12 ? -1 : Integer.parseInt(new String(line, ISO_8859_1).substring(9));
    }

    String get(String host, String path, String more) throws IOException {
        return raw("GET " + path + " HTTP/1.1\nHost: " + host + ":PORT\nConnection: close\n" + more + "\n");
    }

    @Override
    public void close() {
        server.close();
    }
}
