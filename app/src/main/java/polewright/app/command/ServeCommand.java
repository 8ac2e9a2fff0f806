package polewright.app.command;

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
import polewright.app.JobFailed;
import polewright.app.Workbench;
import polewright.app.camera.FrameClues;
import polewright.app.device.PairedDevices;
import polewright.app.web.Commands;
import polewright.app.web.NightDesk;
import polewright.app.web.PageServer;
import polewright.app.web.PracticeDesk;
import polewright.app.web.WatchedFrames;
import polewright.app.web.door.Door;
import polewright.app.web.door.DoorSettings;
import polewright.app.web.door.LocalAddresses;
import polewright.app.web.door.TerminalQr;

@Command(
        name = "serve",
        description = {
            "Serve the pages for the phone and the laptop, until Ctrl-C.",
            "Only this machine can open them; with --share, paired devices in the same network too."
        },
        footer = {"", "For example:", "  polewright serve", "  polewright serve --share --frames ~/captures"})
final class ServeCommand implements Callable<Integer> {
    private static final String LOOPBACK = "127.0.0.1";
    private static final String EVERY_NETWORK = "0.0.0.0";
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(200);
    // A phone at the edge of the Wi-Fi is slow; who says nothing for longer is cut off.
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    private final Workbench workbench;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "8440",
            description = "Where to listen; 0 for any that is free. Default: ${DEFAULT-VALUE}.")
    private int port;

    @Option(
            names = "--share",
            description = "Let phones in the same network in, once they have typed the code that is shown here.")
    private boolean share;

    @Option(names = "--light-terminal", description = "The terminal is light: draw the code's picture for that.")
    private boolean lightTerminal;

    @Option(
            names = "--frames",
            paramLabel = "FOLDER",
            description = "Where the capture program saves: each new frame shows on the pages, and tells the axis.")
    private @Nullable Path frames;

    @Mixin
    private FrameOptions clues;

    @Mixin
    private DriveOption drive;

    @Mixin
    private Output output;

    private String codeShown = "";

    ServeCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        if (port < 0 || port > 65_535) {
            throw new WrongUsage("port " + port + " is outside 0 to 65535: leave --port out, or name another.");
        }
        Commands commands = (inside, words) -> Polewright.run(inside, words.toArray(String[]::new));
        NightDesk nights = NightDesk.of("", workbench, commands).watching(frames(), Clock.systemUTC());
        NightDesk practice = PracticeDesk.of(workbench, commands, Clock.systemUTC());
        Door door = new Door(
                new DoorSettings(
                        share ? LocalAddresses.names() : Set.of(),
                        new PairedDevices(workbench.dataFolder()),
                        workbench.clock(),
                        PageServer.OPEN,
                        PageServer.UPLOADS,
                        PATIENCE),
                PageServer::pairingPage);
        try (UntilStopped running = UntilStopped.byInterrupt();
                PageServer server =
                        PageServer.start(List.of(nights, practice), door, share ? EVERY_NETWORK : LOOPBACK, port)) {
            output.say(workbench, "Polewright is at http://" + LOOPBACK + ":" + server.port() + "/");
            output.say(workbench, "Ctrl-C ends it; what was logged stays.");
            if (share) {
                invite(door, server.port());
            }
            while (!running.isStopped()) {
                running.pause(workbench.pause(), BETWEEN_LOOKS);
                if (share) {
                    renew(door);
                }
            }
        }
        return 0;
    }

    private WatchedFrames.Source frames() {
        FrameClues told = clues.clues(Optional.empty());
        if (frames == null) {
            return WatchedFrames.Source.sent(workbench.dataFolder().resolve("frames"), told, drive.told());
        }
        if (!Files.isDirectory(frames)) {
            throw new JobFailed(frames + (Files.exists(frames) ? " is a file" : " is not there")
                    + ": name the folder that your capture program saves to.");
        }
        return WatchedFrames.Source.saved(frames, told, drive.told());
    }

    private void invite(Door door, int listening) {
        List<String> addresses = LocalAddresses.found();
        if (addresses.isEmpty()) {
            output.say(
                    workbench,
                    "NOTE  This machine is in no network: join one, or let the phone make one, then start again.");
            return;
        }
        codeShown = door.code().grouped();
        List<String> lines = new ArrayList<>(List.of("", "On a phone in the same network open one of"));
        addresses.forEach(address -> lines.add("  http://" + address + ":" + listening + "/"));
        lines.add("and type the code " + codeShown + ", or let its camera read this:");
        output.say(workbench, lines);
        output.show(
                workbench,
                TerminalQr.lines(
                        "http://" + addresses.get(0) + ":" + listening + "/pair#" + codeShown, !lightTerminal));
        output.say(
                workbench,
                "The code serves one device, for 10 minutes. What is sent goes over your network unencrypted: share only"
                        + " in one that you trust. Who was let in: polewright devices");
    }

    private void renew(Door door) {
        String code = door.code().grouped();
        if (!codeShown.isEmpty() && !code.equals(codeShown)) {
            codeShown = code;
            output.say(workbench, "That code is spent. For another device: " + code);
        }
    }
}
