package polewright.bench.pages;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** A served night, and a browser to look at it with. */
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
     * @param folder for the log and the program's output
     * @param options of {@code serve}
     */
    static Serving begin(Path launcher, Path folder, String... options) throws IOException, InterruptedException {
        return new Serving(ServerRun.begin(launcher, folder, options));
    }

    /** With a trailing slash. */
    String address() {
        return "http://127.0.0.1:" + server.port() + "/";
    }

    /** A new device with an empty page. */
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
