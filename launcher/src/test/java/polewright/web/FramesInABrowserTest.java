package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.sighting.TurnedFrames;
import polewright.operations.camera.CameraEvening;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.web.Browser.Device;

/** Frames saved by a capture program appear on the page as they arrive. */
@Tag("slow")
class FramesInABrowserTest {
    private static final LocatorAssertions.ContainsTextOptions SOON =
            new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

    private static final LocatorAssertions.HasAttributeOptions LATER =
            new LocatorAssertions.HasAttributeOptions().setTimeout(20_000);

    @TempDir
    private static Path taken;

    @TempDir
    private Path folder;

    @AutoClose
    private static final Browser BROWSER = new Browser();

    private ServedNight night;
    private BrowserContext context;
    private Page page;

    @BeforeAll
    static void takeFrames() {
        CameraEvening evening = CameraEvening.atLarkfell();
        evening.pointAt(-40, 89.4);
        evening.takeTurning(taken, 3, 30);
        evening.turnScrews(-2, 0.5);
        evening.take(taken.resolve("screw1.fits"));
    }

    @BeforeEach
    void beginNight() {
        night = new ServedNight(folder, "2026-11-25T20:10:00Z");
        assertThat(night.type("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell")
                        .isGood())
                .isTrue();
        context = BROWSER.device(Device.PHONE);
        page = context.newPage();
    }

    @AfterEach
    void close() {
        context.close();
        night.close();
    }

    /** Like capture programs that write elsewhere first. */
    private void save(String name) throws IOException {
        Path part = night.frames().resolve(name + ".part");
        Files.copy(taken.resolve(name), part);
        Files.move(part, night.frames().resolve(name), StandardCopyOption.ATOMIC_MOVE);
    }

    private List<LoggedEvent> events() {
        return night.session().tonight().orElseThrow().events();
    }

    private void saveTurning() throws IOException {
        for (int i = 1; i <= 3; i++) {
            save("turn" + i + ".fits");
            assertThat(page.locator("#frame")).containsText("turn" + i + ".fits", SOON);
        }
    }

    @Test
    void frames_giveTheAxis_thenTheRemainingTurns_withoutAPress() throws IOException {
        page.navigate(night.address("/frames"));
        assertThat(page.locator("#frame")).containsText("No frame yet");
        save("turn1.fits");
        assertThat(page.locator("#frame")).containsText("Turn right ascension by 30 to 90 degrees", SOON);
        save("turn2.fits");
        assertThat(page.locator("#frame")).containsText("Axis: ", SOON);
        save("turn3.fits");
        assertThat(page.locator("#frame")).containsText("turn3.fits", SOON);
        assertThat(page.locator("#frame .light svg .stars circle")).not().hasCount(0);
        assertThat(page.locator("#frame .light svg .axis")).hasCount(1);
        page.locator(".light").click();
        assertThat(page.locator(".light")).hasAttribute("data-times", "2");
        page.setViewportSize(1440, 900);
        page.locator("button[name=palette]").click();
        assertThat(page.locator(".light")).isVisible();
        page.navigate(night.address("/"));
        save("screw1.fits");
        assertThat(page.locator(".steps .step").first()).containsText("Altitude screw 5/16 turn clockwise.", SOON);
        assertThat(page.locator("main")).containsText("Moved since it was found");
        assertThat(page.locator("#frame .light img")).isVisible();
        // The measurements from the frames are in the log before anything is pressed.
        List<LoggedEvent> seen = events();
        assertThat(seen.subList(seen.size() - 2, seen.size()).stream().map(LoggedEvent::event))
                .satisfiesExactly(
                        moved -> assertThat(((NightEvent.ScrewsTurned) moved).isSeenByFrames())
                                .isTrue(),
                        taken -> assertThat(
                                        ((TurnedFrames) ((NightEvent.SightingTaken) taken).sighting()).afterScrews())
                                .isPresent());
        page.locator(".done button.main").click();
        assertThat(page.locator(".said")).containsText("Logged #", SOON);
        assertThat(events()).isEqualTo(seen);
        assertThat(page.locator(".steps .step").first()).containsText("Altitude screw");
    }

    @Test
    void tappedPoint_isShownAtFullSize_alsoForTheNextFrame() throws IOException {
        page.navigate(night.address("/frames"));
        saveTurning();
        page.locator(".light").click();
        assertThat(page.locator(".light")).hasAttribute("data-times", "2");
        String light = page.locator(".light img").getAttribute("src");
        BufferedImage seen = ImageIO.read(new ByteArrayInputStream(
                page.request().get(night.address(light)).body()));
        assertThat(seen.getWidth()).isEqualTo(320);
        assertThat(seen.getHeight()).isEqualTo(240);
        save("screw1.fits");
        assertThat(page.locator("#frame")).containsText("screw1.fits", SOON);
        assertThat(page.locator(".light")).hasAttribute("data-times", "2");
    }

    /** Measuring a frame causes several updates, and a user taps before the last of them. */
    @Test
    void fullSizeView_survivesUpdatesWhileItLoads() throws IOException {
        page.navigate(night.address("/frames"));
        saveTurning();
        page.route(
                "**/frames?times=*",
                route -> {
                    page.waitForResponse("**/frames", () -> page.evaluate("htmx.trigger('#frame', 'sse:frame')"));
                    page.waitForTimeout(300);
                    route.resume();
                },
                new Page.RouteOptions().setTimes(1));
        page.locator(".light").click();
        assertThat(page.locator(".light")).hasAttribute("data-times", "2", LATER);
        page.locator("#look-Whole").click();
        assertThat(page.locator(".light")).hasAttribute("data-times", "1");
    }

    @Test
    void keyboard_zoomsAndPans() throws IOException {
        page.navigate(night.address("/frames"));
        saveTurning();
        page.locator("#look-Closer").focus();
        page.keyboard().press("Enter");
        assertThat(page.locator(".light")).hasAttribute("data-left", "0.25");
        page.locator("#look-Left").focus();
        page.keyboard().press("Enter");
        assertThat(page.locator(".light")).hasAttribute("data-left", "0.0");
        assertThat(page.locator("#look-Left")).isFocused();
        page.keyboard().press("Tab");
        assertThat(page.locator("#look-Right")).isFocused();
        page.locator("#look-Whole").focus();
        page.keyboard().press("Enter");
        assertThat(page.locator(".light")).hasAttribute("data-times", "1");
    }

    @Test
    void darkPalette_showsTheFrameInRedOnly() throws IOException {
        page.navigate(night.address("/frames"));
        saveTurning();
        for (String address : List.of("/frames", "/frames?times=2&x=500&y=500", "/")) {
            page.navigate(night.address(address));
            PagesToEyesAndFingersTest.assertUsable(page, address, Device.PHONE, true);
        }
    }

    @Test
    void invalidPictureRequest_isRefusedInASentence() throws IOException {
        page.navigate(night.address("/frames"));
        assertThat(page.request().get(night.address("/frames/newest.png")).status())
                .isEqualTo(404);
        save("turn1.fits");
        assertThat(page.locator("#frame")).containsText("turn1.fits", SOON);
        for (String odd : List.of(
                "times=2",
                "times=-1&x=1&y=1",
                "times=2&x=1&y=1e9",
                "times=2&x=1&y=NaN",
                "times=2&x=1&y=1&file=/etc/passwd",
                "times=2&times=3&x=1&y=1",
                "times=99999999999999&x=1&y=1")) {
            APIResponse answer = page.request().get(night.address("/frames/newest.png?" + odd));
            assertThat(answer.status()).as(odd).isEqualTo(400);
            assertThat(answer.text()).contains("times, x and y");
        }
        assertThat(page.request().get(night.address("/frames/newest.png")).headers())
                .containsEntry("cache-control", "no-store");
    }
}
