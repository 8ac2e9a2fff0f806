package polewright.web;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Chromium as Debian packages it, one for a whole test class. */
final class Browser implements AutoCloseable {
    private final Playwright playwright =
            Playwright.create(new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    private final com.microsoft.playwright.Browser chromium = playwright
            .chromium()
            .launch(new BrowserType.LaunchOptions()
                    .setExecutablePath(Path.of("/usr/bin/chromium"))
                    // As root, in a container, Chromium's own sandbox cannot be made.
                    .setArgs(List.of(
                            "--no-sandbox",
                            "--disable-gpu",
                            "--no-first-run",
                            "--disable-background-networking",
                            "--disable-component-update",
                            "--disable-sync",
                            // A name that is not the machine's own for itself leads to it all the same.
                            "--host-resolver-rules=MAP " + KnockedDoor.SHARED + " 127.0.0.1")));

    /** What is held in the hand, or stands on the table. */
    enum Device {
        PHONE(360, 740),
        LAPTOP(1440, 900);

        private final int width;
        private final int height;

        Device(int width, int height) {
            this.width = width;
            this.height = height;
        }

        int width() {
            return width;
        }
    }

    /** A device that has not been here before. */
    BrowserContext device(Device device) {
        return chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(device.width, device.height)
                .setHasTouch(device == Device.PHONE));
    }

    /** A phone at Larkfell whose owner went on past the warning of a certificate, and lets pages know the position. */
    BrowserContext phoneThatWentOn() {
        return chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(Device.PHONE.width, Device.PHONE.height)
                .setHasTouch(true)
                .setIgnoreHTTPSErrors(true)
                .setGeolocation(54.60, -2.90)
                .setPermissions(List.of("geolocation", "screen-wake-lock")));
    }

    @Override
    public void close() {
        chromium.close();
        playwright.close();
    }
}
