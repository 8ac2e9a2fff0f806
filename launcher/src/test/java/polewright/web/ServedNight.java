package polewright.web;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import polewright.alignment.camera.Drive;
import polewright.launcher.Main;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameClues;
import polewright.operations.device.PairedDevices;
import polewright.operations.watch.SettableClock;
import polewright.web.access.AccessControl;
import polewright.web.access.AccessSettings;
import polewright.web.session.CommandResult;
import polewright.web.session.Commands;
import polewright.web.session.FrameSource;
import polewright.web.session.NightSession;

/** A night of its own, served on a free port, its clock in the test's hand. */
final class ServedNight implements AutoCloseable {
    private final SettableClock clock;
    private final NightSession desk;
    private final NightSession practice;
    private final Path frames;
    private PageServer server;

    /** Of someone whose capture program saves to a folder. */
    ServedNight(Path folder, String now) {
        this(folder, now, frames -> FrameSource.saved(frames, FrameClues.NONE, Drive.NOT_TOLD));
    }

    /** Of someone without a camera. */
    static ServedNight byEye(Path folder, String now) {
        return new ServedNight(folder, now, frames -> FrameSource.sent(frames, FrameClues.NONE, Drive.NOT_TOLD));
    }

    private ServedNight(Path folder, String now, Function<Path, FrameSource> source) {
        clock = new SettableClock(Instant.parse(now));
        Workbench bench = new Workbench(
                clock,
                Map.of(
                        "POLEWRIGHT_LOG", folder.resolve("nights.sqlite").toString(),
                        "XDG_DATA_HOME", folder.resolve("data").toString()),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL);
        frames = folder.resolve("captures");
        makeFolder(frames);
        Commands commands = (inside, words) -> Main.run(inside, words.toArray(String[]::new));
        desk = NightSession.of("", bench, commands).watching(source.apply(frames), Clock.systemUTC());
        practice = PracticeSession.of(bench, commands, Clock.systemUTC());
        server = PageServer.start(List.of(desk, practice), door(), "127.0.0.1", 0);
    }

    private AccessControl door() {
        return new AccessControl(
                new AccessSettings(
                        Set.of(),
                        new PairedDevices(desk.workbench().dataFolder()),
                        Clock.systemUTC(),
                        PageServer.OPEN,
                        PageServer.UPLOADS,
                        Duration.ofSeconds(15)),
                PageServer::pairingPage);
    }

    /** Where the game's own night is read. */
    NightSession practice() {
        return practice;
    }

    /** Where a capture program would save. */
    Path frames() {
        return frames;
    }

    private static void makeFolder(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    NightSession desk() {
        return desk;
    }

    Instant now() {
        return clock.instant();
    }

    void wait(Duration length) {
        clock.goOn(length);
    }

    String address(String path) {
        return "http://127.0.0.1:" + server.port() + path;
    }

    /** Types a command at a terminal beside it. */
    CommandResult type(String... words) {
        return desk.run(List.of(words));
    }

    /** One page of the log's file, which holds no events, is overwritten. */
    void damagePageOfLog() {
        try {
            byte[] bytes = Files.readAllBytes(desk.workbench().defaultLog());
            Arrays.fill(bytes, 2 * 4096, 3 * 4096, (byte) 0x5a);
            replaceLog(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What is left of the log is no database. */
    void damageLog() {
        replaceLog("x".repeat(8192).getBytes(StandardCharsets.US_ASCII));
    }

    /** At once, so that the watch of the log sees no file that is half written. */
    void replaceLog(byte[] content) {
        try {
            Path log = desk.workbench().defaultLog();
            Path other = Files.write(log.resolveSibling("other"), content);
            Files.move(other, log, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            for (String beside : List.of("-wal", "-shm")) {
                Files.deleteIfExists(log.resolveSibling(log.getFileName() + beside));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Ends the server, as a laptop that is shut, and starts it again on the same port. */
    void restart(Runnable meanwhile) {
        int port = server.port();
        server.close();
        meanwhile.run();
        server = PageServer.start(List.of(desk, practice), door(), "127.0.0.1", port);
    }

    @Override
    public void close() {
        server.close();
    }
}
