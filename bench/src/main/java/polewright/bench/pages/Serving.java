package polewright.bench.pages;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A night at Larkfell, begun and served by processes of their own, and a browser to look at it with. */
final class Serving implements AutoCloseable {
    private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/");

    private final Process server;
    private final String address;
    private final Playwright playwright;
    private final Browser browser;

    private Serving(Process server, String address) {
        this.server = server;
        this.address = address;
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(Path.of("/usr/bin/chromium"))
                        .setArgs(List.of("--no-sandbox", "--disable-gpu")));
    }

    /**
     * Returns when the address is printed.
     *
     * @param folder for the log and what the program says
     * @param options of {@code serve}
     */
    static Serving begin(Path launcher, Path folder, String... options) throws IOException, InterruptedException {
        started(folder, launcher, "begin", List.of("--site", "54.60,-2.90,240"))
                .onExit()
                .join();
        // With the altitude known, a compass moves the fix.
        started(folder, launcher, "sight", List.of("scale", "54.6")).onExit().join();
        List<String> serving = new ArrayList<>(List.of("--port", "0"));
        serving.addAll(List.of(options));
        Process server = started(folder, launcher, "serve", serving);
        return new Serving(server, address(folder.resolve("serve")));
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

    /** As the server prints it first. */
    private static String address(Path printed) throws IOException, InterruptedException {
        for (int tries = 0; tries < 100; tries++) {
            Matcher address = ADDRESS.matcher(Files.readString(printed, StandardCharsets.UTF_8));
            if (address.find()) {
                return address.group();
            }
            Thread.sleep(100);
        }
        throw new IllegalStateException("the server does not start: " + Files.readString(printed));
    }

    /** With a slash at its end. */
    String address() {
        return address;
    }

    /** A device that was not here before, with its page empty. */
    Page device(int width, int height) {
        return browser.newContext(new Browser.NewContextOptions().setViewportSize(width, height))
                .newPage();
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
        server.destroy();
    }
}
