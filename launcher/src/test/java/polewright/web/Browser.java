package polewright.web;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Devices of one test class in Chromium, as Debian packages it. One Chromium serves all classes of a test process; it ends
 * with the process.
 */
final class Browser implements AutoCloseable {
    private final List<BrowserContext> devices = new ArrayList<>();

    // Playwright is used by one thread, as JUnit runs the classes of a process one by one.
    private static com.microsoft.playwright.@Nullable Browser running;

    /** Started by the first class that needs it, and again after a crash. */
    private static com.microsoft.playwright.Browser chromium() {
        com.microsoft.playwright.Browser present = running;
        if (present == null || !present.isConnected()) {
            present = Playwright.create(
                            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")))
                    .chromium()
                    .launch(new BrowserType.LaunchOptions()
                            .setExecutablePath(Path.of("/usr/bin/chromium"))
                            // As root, in a container, Chromium's own sandbox cannot be set up.
                            .setArgs(List.of(
                                    "--no-sandbox",
                                    "--disable-gpu",
                                    "--no-first-run",
                                    "--disable-background-networking",
                                    "--disable-component-update",
                                    "--disable-sync",
                                    // Resolves the shared host name to this machine.
                                    "--host-resolver-rules=MAP " + KnockedDoor.SHARED + " 127.0.0.1")));
            running = present;
        }
        return present;
    }

    /** A phone in the hand or a laptop on the table. */
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
        return opened(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(device.width, device.height)
                .setHasTouch(device == Device.PHONE));
    }

    /** A phone at Larkfell whose owner went on past the warning of a certificate, and lets pages know the position. */
    BrowserContext phoneThatWentOn() {
        return opened(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(Device.PHONE.width, Device.PHONE.height)
                .setHasTouch(true)
                .setIgnoreHTTPSErrors(true)
                .setGeolocation(54.60, -2.90)
                .setPermissions(List.of("geolocation", "screen-wake-lock")));
    }

    private BrowserContext opened(com.microsoft.playwright.Browser.NewContextOptions options) {
        BrowserContext device = chromium().newContext(options);
        devices.add(device);
        return device;
    }

    /** Closes the devices of this class. */
    @Override
    public void close() {
        devices.forEach(BrowserContext::close);
        devices.clear();
    }
}
