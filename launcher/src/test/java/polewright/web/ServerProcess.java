package polewright.web;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import polewright.launcher.Main;
import polewright.session.event.NightEvent;
import polewright.store.NightLog;

/** The server in a separate process, so that it can be killed. */
final class ServerProcess {
    private ServerProcess() {}

    /** Starts on the given port, or on any free port if 0. */
    static Process start(Path log, int port) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "serve",
                "--port",
                Integer.toString(port));
        builder.environment().put("POLEWRIGHT_LOG", log.toString());
        builder.redirectError(ProcessBuilder.Redirect.DISCARD);
        return builder.start();
    }

    /** The port printed by the process once it listens. */
    static int port(Process server) throws IOException {
        BufferedReader output = server.inputReader();
        String line = output.readLine();
        if (line == null) {
            throw new IOException("the server ended before it listened");
        }
        return Integer.parseInt(line.replaceFirst(".*:(\\d+)/.*", "$1"));
    }

    /** The notes of the last night in the log. */
    static List<String> notes(Path log) {
        try (NightLog opened = NightLog.open(log)) {
            return opened.events(opened.latest().orElseThrow()).stream()
                    .filter(logged -> logged.event() instanceof NightEvent.Noted)
                    .map(logged -> ((NightEvent.Noted) logged.event()).text())
                    .toList();
        }
    }
}
