package polewright.launcher;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.cli.DriveOption;
import polewright.cli.FrameOptions;
import polewright.cli.TerminalOutput;
import polewright.cli.UntilStopped;
import polewright.cli.WrongUsage;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameClues;
import polewright.operations.device.PairedDevices;
import polewright.web.PageServer;
import polewright.web.PracticeSession;
import polewright.web.access.AccessControl;
import polewright.web.access.AccessSettings;
import polewright.web.access.LocalAddresses;
import polewright.web.access.ServerCertificate;
import polewright.web.access.TerminalQr;
import polewright.web.session.FrameSource;
import polewright.web.session.NightSession;

@Command(
        name = "serve",
        description = {
            "Serve the pages for phone and laptop until Ctrl-C.",
            "Only this machine can open them; with --share, paired devices on the same network can too."
        },
        footer = {
            "",
            "For example:",
            "  polewright serve",
            "  polewright serve --share --frames ~/captures",
            "  polewright serve --share --secure"
        })
public final class ServeCommand implements Callable<Integer> {
    private static final String LOOPBACK = "127.0.0.1";
    private static final String EVERY_NETWORK = "0.0.0.0";
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(200);
    // A phone at the edge of the Wi-Fi is slow; who says nothing for longer is cut off.
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    // 32 bytes of two digits and a colon each.
    private static final int HALF_A_FINGERPRINT = 48;

    private final Workbench workbench;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "" + PageServer.USUAL_PORT,
            description = "Port to listen on; 0 for any free one. Default: ${DEFAULT-VALUE}.")
    private int port;

    @Option(
            names = "--share",
            description = "Let phones on the same network in once they have entered the code shown here.")
    private boolean share;

    @Option(
            names = "--secure",
            description = {
                "With --share: encrypt the connection with this machine's own certificate. A phone's browser warns"
                        + " once, and can then keep its screen on and share its position."
            })
    private boolean secure;

    @Option(names = "--light-terminal", description = "Draw the QR code for a light terminal.")
    private boolean lightTerminal;

    @Option(
            names = "--frames",
            paramLabel = "FOLDER",
            description =
                    "Where the capture program saves: each new frame appears on the pages and is used for the fix.")
    private @Nullable Path frames;

    @Mixin
    private FrameOptions clues;

    @Mixin
    private DriveOption drive;

    @Mixin
    private TerminalOutput output;

    /** Reads the folders and the clock of this workbench. */
    public ServeCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        if (port < 0 || port > 65_535) {
            throw new WrongUsage("port " + port + " is outside 0 to 65535. Leave --port out, or name another.");
        }
        if (secure && !share) {
            throw new WrongUsage("--secure needs --share: without it, nothing leaves this machine.");
        }
        NightSession nights = NightSession.of("", workbench).watching(frames(), Clock.systemUTC());
        NightSession practice = PracticeSession.of(workbench, Clock.systemUTC());
        AccessSettings plain = new AccessSettings(
                share ? LocalAddresses.names() : Set.of(),
                new PairedDevices(workbench.dataFolder()),
                workbench.clock(),
                PageServer.OPEN,
                PageServer.UPLOADS,
                PATIENCE);
        Optional<ServerCertificate> certificate = secure
                ? Optional.of(ServerCertificate.in(workbench.dataFolder(), plain.names(), workbench.now()))
                : Optional.empty();
        AccessControl door = new AccessControl(certificate.map(plain::with).orElse(plain), PageServer::pairingPage);
        try (UntilStopped running = UntilStopped.byInterrupt();
                PageServer server =
                        PageServer.start(List.of(nights, practice), door, share ? EVERY_NETWORK : LOOPBACK, port)) {
            output.say(workbench, "Polewright is at http://" + LOOPBACK + ":" + server.port() + "/");
            output.say(workbench, "Stop it with Ctrl-C; the log is kept.");
            if (share) {
                invite(door, server.port(), certificate);
            }
            while (!running.isStopped()) {
                running.pause(workbench.pause(), BETWEEN_LOOKS);
                if (share) {
                    door.news().forEach(sentence -> output.say(workbench, sentence));
                }
            }
        }
        return 0;
    }

    private FrameSource frames() {
        FrameClues told = clues.clues(Optional.empty());
        if (frames == null) {
            return FrameSource.sent(workbench.dataFolder().resolve("frames"), told, drive.told());
        }
        if (!Files.isDirectory(frames)) {
            throw new OperationFailed(frames + (Files.exists(frames) ? " is a file" : " does not exist")
                    + ". Name the folder that your capture program saves to.");
        }
        return FrameSource.saved(frames, told, drive.told());
    }

    private void invite(AccessControl door, int listening, Optional<ServerCertificate> certificate) {
        List<String> addresses = LocalAddresses.found();
        if (addresses.isEmpty()) {
            output.say(
                    workbench,
                    "NOTE  This machine is not on a network. Join one, or use the phone's hotspot, then start again.");
            return;
        }
        String code = door.code().grouped();
        String scheme = certificate.isPresent() ? "https://" : "http://";
        List<String> lines = new ArrayList<>(List.of("", "On a phone on the same network, open one of"));
        addresses.forEach(address -> lines.add("  " + scheme + address + ":" + listening + "/"));
        lines.add("and enter the code " + code + ", or scan this:");
        output.say(workbench, lines);
        output.show(
                workbench,
                TerminalQr.lines(scheme + addresses.get(0) + ":" + listening + "/pair#" + code, !lightTerminal));
        output.say(
                workbench,
                "The code works for one device, for 10 minutes; a new one appears here when a device asks. Paired"
                        + " devices:"
                        + " polewright devices");
        output.say(
                workbench,
                certificate
                        .map(own -> List.of(
                                "The connection is encrypted. The browser warns once, because this machine signed"
                                        + " its own certificate. Continue if the SHA-256 fingerprint in the browser is",
                                "  " + own.fingerprint().substring(0, HALF_A_FINGERPRINT),
                                "  " + own.fingerprint().substring(HALF_A_FINGERPRINT)))
                        .orElseGet(
                                () -> List.of("The connection is not encrypted: share only on a network you trust, or"
                                        + " add --secure.")));
    }
}
