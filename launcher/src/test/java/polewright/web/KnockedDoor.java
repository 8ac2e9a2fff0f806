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
import polewright.launcher.Main;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameClues;
import polewright.operations.device.PairedDevices;
import polewright.operations.watch.SettableClock;
import polewright.web.access.AccessControl;
import polewright.web.access.AccessSettings;
import polewright.web.access.ServerCertificate;
import polewright.web.session.Commands;
import polewright.web.session.FrameSource;
import polewright.web.session.NightSession;

/** The whole server, shared under the name larkfell.local, knocked at with bytes. */
final class KnockedDoor implements AutoCloseable {
    /** A name of the machine on the network: who calls it so is taken for another device, wherever it is. */
    static final String SHARED = "larkfell.local";

    static final Duration PATIENCE = Duration.ofSeconds(2);

    private final AccessControl door;
    private final PairedDevices devices;
    private final NightSession desk;
    private final PageServer server;

    KnockedDoor(Path folder) {
        this(folder, false);
    }

    /** With --secure too. */
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
        Commands commands = (inside, words) -> Main.run(inside, words.toArray(String[]::new));
        desk = NightSession.of("", bench, commands)
                .watching(
                        FrameSource.sent(folder.resolve("frames"), FrameClues.NONE, Drive.NOT_TOLD), Clock.systemUTC());
        NightSession practice = PracticeSession.of(bench, commands, Clock.systemUTC());
        devices = new PairedDevices(bench.dataFolder());
        AccessSettings plain = new AccessSettings(
                Set.of(SHARED), devices, Clock.systemUTC(), PageServer.OPEN, PageServer.UPLOADS, PATIENCE);
        door = new AccessControl(
                secure
                        ? plain.with(ServerCertificate.in(
                                bench.dataFolder(),
                                plain.names(),
                                Clock.systemUTC().instant()))
                        : plain,
                PageServer::pairingPage);
        server = PageServer.start(List.of(desk, practice), door, "127.0.0.1", 0);
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

    AccessControl door() {
        return door;
    }

    NightSession desk() {
        return desk;
    }

    /** A cookie of a device that is let in. */
    String paired() {
        return "Cookie: " + AccessControl.COOKIE + "="
                + devices.pair("Tent", Instant.parse("2026-11-26T20:00:00Z")).token() + "\n";
    }

    Socket socket() throws IOException {
        return socket("127.0.0.1");
    }

    /** From one of the addresses of the loopback network, which are all this machine's on Linux. */
    Socket socket(String from) throws IOException {
        Socket socket = new Socket();
        socket.bind(new InetSocketAddress(InetAddress.getByName(from), 0));
        socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), server.port()));
        socket.setSoTimeout(20_000);
        return socket;
    }

    /** Bytes of a request in which PORT stands for the port, and a line's end for CR LF. */
    byte[] bytes(String request) {
        return request.replace("PORT", Integer.toString(server.port()))
                .replace("\n", "\r\n")
                .getBytes(ISO_8859_1);
    }

    /** What comes back until the connection is closed. */
    String raw(String request) throws IOException {
        try (Socket socket = socket()) {
            socket.getOutputStream().write(bytes(request));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), ISO_8859_1);
        }
    }

    /** The status line's figure; a stream's too, which is not waited for. */
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
