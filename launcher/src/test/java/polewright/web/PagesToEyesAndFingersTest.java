package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.web.Browser.Device;
import polewright.web.page.Pages;

/** Every page on phone and laptop, in both palettes: dark-adapted eyes, gloved fingers and screen readers. */
@Tag("slow")
class PagesToEyesAndFingersTest {
    // Out of 255. The brightest green of the palette is 0x51, in letters of #ff5138; the rest is mostly red.
    private static final int MOST_GREEN = 0x54;
    private static final int MOST_BLUE = 0x3c;
    private static final double LEAST_PX = 48;

    @AutoClose
    private static final Browser BROWSER = new Browser();

    private static final String AXE = axe();

    @TempDir
    private static Path folder;

    private static ServedNight night;

    @BeforeAll
    static void serveNightWithAFix() {
        night = new ServedNight(folder, "2026-11-25T20:00:00Z");
        type("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell", "--for", "casual", "look");
        type("sight", "compass", "3");
        type("sight", "scale", "54.2");
        type("sight", "still", "polaris", "--distance", "0.1", "--toward", "2", "--with", "finder");
        type("note", "dew on the corrector plate");
        type("horizon", "0,8", "95,22.5", "180,4", "270,15");
        type("practice", "begin", "--camera");
        type("practice", "look", "rocking");
    }

    private static String axe() {
        try (InputStream in = PagesToEyesAndFingersTest.class.getResourceAsStream("/axe.min.js")) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void type(String... words) {
        CommandOutcome result = night.type(words);
        assertThat(result.isGood()).as("%s", result).isTrue();
    }

    @AfterAll
    static void close() {
        night.close();
    }

    private static void choose(Page page, String palette) {
        page.navigate(night.address("/"));
        if (palette.equals("day")) {
            page.locator("button[name=palette]").click();
            page.locator("html.day").waitFor();
        }
    }

    /** Each page on both devices in both palettes; without {@code isEveryone}, those under the menu's entries. */
    @ParameterizedTest
    @CsvSource({"PHONE, dark, true", "PHONE, day, false", "LAPTOP, dark, false", "LAPTOP, day, true"})
    void everyPageIsUsable(Device device, String palette, boolean isEveryone) throws IOException {
        try (BrowserContext context = BROWSER.device(device)) {
            Page page = context.newPage();
            choose(page, palette);
            for (polewright.web.page.Page menuPage : isEveryone ? Pages.all() : underTheMenu()) {
                Response response = page.navigate(night.address(menuPage.path()));
                assertThat(response.status()).as(menuPage.path()).isEqualTo(200);
                assertUsable(page, menuPage.path(), device, palette.equals("dark"));
            }
            for (String path : List.of("/practice/night/", "/practice/night/frames")) {
                page.navigate(night.address(path));
                assertUsable(page, path, device, palette.equals("dark"));
            }
        }
    }

    private static List<polewright.web.page.Page> underTheMenu() {
        return Pages.menu().stream().flatMap(entry -> entry.pages().stream()).toList();
    }

    static void assertUsable(Page page, String path, Device device, boolean isDark) throws IOException {
        assertThat(page.evaluate("document.documentElement.scrollWidth"))
                .as("%s is no wider than the screen", path)
                .isEqualTo(device.width());
        assertThat(tooSmall(page)).as("%s: targets below 48 px", path).isEmpty();
        assertThat(findings(page)).as("%s: accessibility", path).isEmpty();
        if (isDark) {
            assertRedOnly(page, path);
        }
    }

    /** Descriptions of controls that are too small for a gloved finger. */
    private static List<?> tooSmall(Page page) {
        return (List<?>) page.evaluate("""
                least => [...document.querySelectorAll('a, button, select, input:not([type=hidden]), summary')]
                  .filter(e => e.offsetParent !== null && !e.classList.contains('skip'))
                  .map(e => e.type === 'checkbox' ? e.closest('label') : e)
                  .map(e => [e, e.getBoundingClientRect()])
                  .filter(([e, box]) => box.width < least || box.height < least)
                  .map(([e, box]) => e.outerHTML.slice(0, 80) + ' ' + box.width + ' x ' + box.height)
                """, LEAST_PX);
    }

    /** Serious and critical findings of axe-core under the rules of WCAG 2.2 AA. */
    private static List<?> findings(Page page) {
        // At full length, so that content covered by the bottom bar can be scrolled into view.
        int width = page.viewportSize().width;
        int height = page.viewportSize().height;
        page.setViewportSize(width, ((Number) page.evaluate("document.documentElement.scrollHeight")).intValue());
        page.evaluate(AXE);
        Object found = page.evaluate("""
                async () => {
                  const run = await axe.run(document, {
                    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
                    resultTypes: ['violations']
                  });
                  return run.violations
                    .filter(v => v.impact === 'serious' || v.impact === 'critical')
                    .map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0, 120)).join(' | '));
                }
                """);
        page.setViewportSize(width, height);
        return (List<?>) found;
    }

    private static void assertRedOnly(Page page, String path) throws IOException {
        BufferedImage shot =
                ImageIO.read(new ByteArrayInputStream(page.screenshot(new Page.ScreenshotOptions().setFullPage(true))));
        int green = 0;
        int blue = 0;
        for (int colour : shot.getRGB(0, 0, shot.getWidth(), shot.getHeight(), null, 0, shot.getWidth())) {
            green = Math.max(green, colour >> 8 & 0xff);
            blue = Math.max(blue, colour & 0xff);
        }
        assertThat(green).as("%s: brightest green", path).isLessThanOrEqualTo(MOST_GREEN);
        assertThat(blue).as("%s: brightest blue", path).isLessThanOrEqualTo(MOST_BLUE);
    }

    @Test
    void firstPage_isLight() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            long[] bytes = {0};
            page.onResponse(response -> {
                if (!response.url().contains("/changes")) {
                    bytes[0] += response.body().length
                            + response.headersArray().stream()
                                    .mapToLong(h -> h.name.length() + h.value.length() + 4)
                                    .sum();
                }
            });
            page.navigate(night.address("/"));
            page.waitForTimeout(500);
            assertThat(bytes[0]).as("bytes before any compression").isBetween(10_000L, 100_000L);
        }
    }

    @Test
    void page_loadsNothingFromOtherHosts() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            List<String> asked = new java.util.ArrayList<>();
            page.onRequest(request -> asked.add(request.url()));
            for (polewright.web.page.Page menuPage : underTheMenu()) {
                page.navigate(night.address(menuPage.path()));
            }
            assertThat(asked).isNotEmpty().allSatisfy(url -> assertThat(url).startsWith(night.address("/")));
        }
    }

    @Test
    void position_isTakenFromTheDevice_withPermission() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            context.grantPermissions(List.of("geolocation"));
            context.setGeolocation(new com.microsoft.playwright.options.Geolocation(54.6, -2.9));
            Page page = context.newPage();
            page.navigate(night.address("/begin"));
            page.locator("#here").click();
            com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat(page.locator("#begin-site"))
                    .hasValue("54.6000,-2.9000");
        }
    }

    @ParameterizedTest
    @CsvSource({
        // Background and text: WCAG 2.2, 1.4.3 requires 4.5. Edges: 1.4.11 requires 3. Colours as in page.css.
        "#000000, #ea432d, 4.5",
        "#220705, #ea432d, 4.5",
        "#000000, #e4412b, 4.5",
        "#3a0d08, #ff5138, 4.5",
        "#000000, #b03523, 3.0",
        "#fbfaf5, #22303a, 4.5",
        "#e6ebe6, #22303a, 4.5",
        "#fbfaf5, #4d5a63, 4.5",
        "#8a2d15, #ffffff, 4.5",
        "#fbfaf5, #76828a, 3.0",
    })
    void contrast_isSufficient(String paper, String ink, double least) throws IOException {
        try (InputStream in = PageServer.class.getResourceAsStream("static/page.css")) {
            assertThat(new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8))
                    .contains(paper, ink);
        }
        double a = luminance(paper) + 0.05;
        double b = luminance(ink) + 0.05;
        assertThat(Math.max(a, b) / Math.min(a, b)).isGreaterThanOrEqualTo(least);
    }

    /** Relative luminance as defined by WCAG 2.2. */
    private static double luminance(String colour) {
        double[] weight = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double share = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            sum += weight[i] * (share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4));
        }
        return sum;
    }
}
