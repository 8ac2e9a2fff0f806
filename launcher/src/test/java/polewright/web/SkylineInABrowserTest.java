package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import java.nio.file.Path;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import polewright.session.event.NightEvent;
import polewright.sky.place.Horizon;
import polewright.web.Browser.Device;

/** The skyline's corners moved by finger and by keyboard, and the sketches that follow the form's entries. */
@Tag("slow")
class SkylineInABrowserTest {
    // Three units of the strip are one degree, and a unit is one pixel.
    private static final double PX_PER_DEGREE = 3;

    @AutoClose
    private static final Browser BROWSER = new Browser();

    @TempDir
    private Path folder;

    private ServedNight night;

    @BeforeEach
    void serve() {
        night = new ServedNight(folder, "2026-11-25T20:00:00Z");
        assertThat(night.type("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell", "--for", "casual", "look")
                        .isGood())
                .isTrue();
    }

    @AfterEach
    void close() {
        night.close();
    }

    private List<Horizon.Point> logged() {
        NightEvent last = night.session().tonight().orElseThrow().events().stream()
                .reduce((earlier, later) -> later)
                .orElseThrow()
                .event();
        return ((NightEvent.HorizonSet) last).horizon().points();
    }

    private static Locator corner(Page page, int number) {
        return page.locator(".corner[aria-label^='Corner " + number + " of']");
    }

    @ParameterizedTest
    @EnumSource(Device.class)
    void corners_areMovedByDraggingAndByKeys_andTheSkylineIsLogged(Device device) {
        night.type("horizon", "0,8", "20,20", "200,4");
        try (BrowserContext context = BROWSER.device(device)) {
            Page page = context.newPage();
            page.navigate(night.address("/rig"));
            BoundingBox box = corner(page, 2).boundingBox();
            double x = box.x + box.width / 2;
            double y = box.y + box.height / 2;
            page.mouse().move(x, y);
            page.mouse().down();
            page.mouse().move(x + 10 * PX_PER_DEGREE, y - 5 * PX_PER_DEGREE);
            page.mouse().up();
            assertThat(page.locator("#horizon-corners")).hasValue("0,8 30,25 200,4");
            corner(page, 1).focus();
            page.keyboard().press("ArrowRight");
            page.keyboard().press("ArrowRight");
            page.keyboard().press("Shift+ArrowUp");
            assertThat(page.locator("#horizon-said")).containsText("azimuth 2°, 18° high");
            // The server has redrawn the skyline from the handles.
            assertThat(page.locator("#horizon-sketch svg g.corners circle")).hasCount(3);
            page.locator(".entry:has(#horizon-corners) button.main").click();
            PersonAtThePage.assertLogged(page, 4);
            List<Horizon.Point> corners = logged();
            assertThat(corners).hasSize(3);
            assertThat(corners.get(0).azimuth().degrees()).isCloseTo(2, Offset.offset(1e-9));
            assertThat(corners.get(0).altitude().degrees()).isCloseTo(18, Offset.offset(1e-9));
            assertThat(corners.get(1).azimuth().degrees()).isCloseTo(30, Offset.offset(1e-9));
            assertThat(corners.get(1).altitude().degrees()).isCloseTo(25, Offset.offset(1e-9));
        }
    }

    @Test
    void corner_canBeAddedAndRemoved_andAnOpenSkyIsOnePress() {
        night.type("horizon", "0,8", "100,20");
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            page.navigate(night.address("/rig"));
            page.locator("#horizon-add").click();
            assertThat(page.locator("#horizon-corners")).hasValue("0,8 100,20 230,14");
            assertThat(page.locator("#horizon-sketch svg g.corners circle")).hasCount(3);
            corner(page, 1).focus();
            page.keyboard().press("Delete");
            assertThat(page.locator("#horizon-corners")).hasValue("100,20 230,14");
            assertThat(page.locator("#horizon-sketch svg g.corners circle")).hasCount(2);
            page.locator("form[action$='/do/open-sky'] button").click();
            PersonAtThePage.assertLogged(page, 4);
            assertThat(logged()).isEmpty();
        }
    }

    @Test
    void typedFigures_moveTheHandles() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            page.navigate(night.address("/rig"));
            page.locator("#horizon-corners").fill("0,8 90,30");
            assertThat(page.locator(".corner")).hasCount(2);
            assertThat(page.locator("#horizon-sketch svg g.corners circle")).hasCount(2);
        }
    }

    @Test
    void sketch_followsTheEntry_andStaysWhileTheEntryIsInvalid() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            page.navigate(night.address("/sightings/compass"));
            page.locator("#compass-bearing").fill("350");
            assertThat(page.locator("#compass-sketch svg")).containsText("bearing 350°");
            page.locator("#compass-bearing").fill("350x");
            // Followed by another figure, by which time an answer to the previous one would have arrived.
            page.waitForResponse(
                    response -> response.url().contains("/sketch/compass"),
                    () -> page.locator("#compass-declination").fill("1"));
            assertThat(page.locator("#compass-sketch svg")).containsText("bearing 350°");
            page.locator("#compass-bearing").fill("10");
            assertThat(page.locator("#compass-sketch svg")).containsText("bearing 10°");
            assertThat(page.locator("#compass-sketch svg")).containsText("11° right of north");
        }
    }
}
