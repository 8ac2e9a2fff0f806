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
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameClues;
import polewright.operations.device.PairedDevices;
import polewright.operations.watch.SettableClock;
import polewright.web.access.AccessControl;
import polewright.web.access.AccessSettings;
import polewright.web.session.FrameSource;
import polewright.web.session.NightSession;

/** A separate night served on a free port, with a clock that the test sets. */
final class ServedNight implements AutoCloseable {
    private final SettableClock clock;
    private final NightSession session;
    private final NightSession practice;
    private final Path frames;
    private PageServer server;

    /** For a user whose capture program saves to a folder. */
    ServedNight(Path folder, String now) {
        this(folder, now, frames -> FrameSource.saved(frames, FrameClues.NONE, Drive.NOT_TOLD));
    }

    /** For a user without a camera. */
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
        session = NightSession.of("", bench).watching(source.apply(frames), Clock.systemUTC());
        practice = PracticeSession.of(bench, Clock.systemUTC());
        server = PageServer.start(List.of(session, practice), accessControl(), "127.0.0.1", 0);
    }

    private AccessControl accessControl() {
        return new AccessControl(
                new AccessSettings(
                        Set.of(),
                        new PairedDevices(session.workbench().dataFolder()),
                        Clock.systemUTC(),
                        PageServer.OPEN,
                        PageServer.UPLOADS,
                        Duration.ofSeconds(15)),
                PageServer::pairingPage);
    }

    /** The session of the practice night. */
    NightSession practice() {
        return practice;
    }

    /** The folder of the capture program. */
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

    NightSession session() {
        return session;
    }

    Instant now() {
        return clock.instant();
    }

    void wait(Duration length) {
        clock.advance(length);
    }

    String address(String path) {
        return "http://127.0.0.1:" + server.port() + path;
    }

    /** Types a command in a terminal while the server runs. */
    CommandOutcome type(String... words) {
        return CommandOutcome.run(session.workbench(), words);
    }

    /** Overwrites a page of the log file that holds no events. */
    void damagePageOfLog() {
        try {
            byte[] bytes = Files.readAllBytes(session.workbench().defaultLog());
            Arrays.fill(bytes, 2 * 4096, 3 * 4096, (byte) 0x5a);
            replaceLog(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Makes the whole log unreadable as a database. */
    void damageLog() {
        replaceLog("x".repeat(8192).getBytes(StandardCharsets.US_ASCII));
    }

    /** Replaced atomically, so that the server never sees a half-written file. */
    void replaceLog(byte[] content) {
        try {
            Path log = session.workbench().defaultLog();
            Path replacement = Files.write(log.resolveSibling("other"), content);
            // The server looks at the log at any moment: with a write-ahead log of the old file it would repair the
            // new.
            deleteWriteAheadLog(log);
            Files.move(replacement, log, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            deleteWriteAheadLog(log);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void deleteWriteAheadLog(Path log) throws IOException {
        for (String suffix : List.of("-wal", "-shm")) {
            Files.deleteIfExists(log.resolveSibling(log.getFileName() + suffix));
        }
    }

    /** Stops the server, as when a laptop is shut, and starts it again on the same port. */
    void restart(Runnable meanwhile) {
        int port = server.port();
        server.close();
        meanwhile.run();
        server = PageServer.start(List.of(session, practice), accessControl(), "127.0.0.1", port);
    }

    @Override
    public void close() {
        server.close();
    }
}
