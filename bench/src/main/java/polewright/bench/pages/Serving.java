package polewright.bench.pages;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** A night that is served, and a browser to look at it with. */
final class Serving implements AutoCloseable {
    private final ServerRun server;
    private final Playwright playwright;
    private final Browser browser;

    private Serving(ServerRun server) {
        this.server = server;
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
        return new Serving(ServerRun.begin(launcher, folder, options));
    }

    /** With a slash at its end. */
    String address() {
        return "http://127.0.0.1:" + server.port() + "/";
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
        server.close();
    }
}
