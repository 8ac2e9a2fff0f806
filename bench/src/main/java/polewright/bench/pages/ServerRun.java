package polewright.bench.pages;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A night at Larkfell, begun and served by processes of their own. */
final class ServerRun implements AutoCloseable {
    private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:(\\d+)/");

    private final Process server;
    private final Path printed;
    private final int port;

    private ServerRun(Process server, Path printed, int port) {
        this.server = server;
        this.printed = printed;
        this.port = port;
    }

    /**
     * Returns when the address is printed.
     *
     * @param folder for the log and the program's output
     * @param options of {@code serve}
     */
    static ServerRun begin(Path launcher, Path folder, String... options) throws IOException, InterruptedException {
        started(folder, launcher, "begin", List.of("--site", "54.60,-2.90,240"))
                .onExit()
                .join();
        // With the altitude known, a compass moves the fix.
        started(folder, launcher, "sight", List.of("scale", "54.6")).onExit().join();
        List<String> serving = new ArrayList<>(List.of("--port", "0"));
        serving.addAll(List.of(options));
        Process server = started(folder, launcher, "serve", serving);
        Path printed = folder.resolve("serve");
        return new ServerRun(server, printed, port(printed));
    }

    private static Process started(Path folder, Path launcher, String command, List<String> options)
            throws IOException {
        List<String> words = new ArrayList<>(List.of(launcher.toString(), command));
        words.addAll(options);
        ProcessBuilder builder = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve(command).toFile())
                .redirectInput(new File("/dev/null"));
        builder.environment()
                .put("POLEWRIGHT_LOG", folder.resolve("nights.sqlite").toString());
        builder.environment().put("XDG_DATA_HOME", folder.toString());
        return builder.start();
    }

    /** The port that the server prints first. */
    private static int port(Path printed) throws IOException, InterruptedException {
        for (int tries = 0; tries < 300; tries++) {
            Matcher address = ADDRESS.matcher(Files.readString(printed, StandardCharsets.UTF_8));
            if (address.find()) {
                return Integer.parseInt(address.group(1));
            }
            Thread.sleep(100);
        }
        throw new IllegalStateException("the server does not start: " + Files.readString(printed));
    }

    int port() {
        return port;
    }

    long pid() {
        return server.pid();
    }

    boolean isRunning() {
        return server.isAlive();
    }

    /** The first group of the first match of a pattern in the server's output. */
    Optional<String> printed(Pattern pattern) {
        try {
            Matcher found = pattern.matcher(Files.readString(printed, StandardCharsets.UTF_8));
            return found.find() ? Optional.of(found.group(1)) : Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        server.destroy();
    }
}
