package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.advice.Advice;
import polewright.mount.AxisOffset;
import polewright.sky.place.Site;
import polewright.web.Browser.Device;
import polewright.web.page.Pages;

/** A small phone in one hand: the menu at the thumb, and the main button of each page in sight without scrolling. */
@Tag("slow")
class OneHandedPagesTest {
    private static final int WIDTH = 360;
    private static final int HEIGHT = 640;

    @AutoClose
    private static final Browser BROWSER = new Browser();

    @TempDir
    private static Path folder;

    private static ServedNight night;

    @BeforeAll
    static void serveNight() {
        night = ServedNight.byEye(folder, "2026-11-25T20:00:00Z");
        assertThat(night.type("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell", "--for", "casual look")
                        .isGood())
                .isTrue();
        assertThat(night.type("practice", "begin").isGood()).isTrue();
    }

    @AfterAll
    static void close() {
        night.close();
    }

    private static Page smallPhone(BrowserContext context) {
        Page page = context.newPage();
        page.setViewportSize(WIDTH, HEIGHT);
        return page;
    }

    /** Every page of the night, and some of the practice night, which has a banner above. */
    private static List<String> paths() {
        return Stream.concat(
                        Pages.all().stream().map(polewright.web.page.Page::path),
                        Stream.of("/practice/night/", "/practice/night/more", "/practice/night/sightings/drift"))
                .toList();
    }

    @Test
    void menu_isOneRowAtTheFoot_andMarksTheEntryOfEachPage() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = smallPhone(context);
            for (String path : paths()) {
                page.navigate(night.address(path));
                List<BoundingBox> links = page.locator(".menu a").all().stream()
                        .map(Locator::boundingBox)
                        .toList();
                assertThat(links).as(path).hasSizeLessThanOrEqualTo(5);
                assertThat(links).as(path).allSatisfy(link -> {
                    assertThat(link.y).isEqualTo(links.get(0).y).isGreaterThan(HEIGHT - 64.0);
                    assertThat(link.y + link.height).isLessThanOrEqualTo(HEIGHT);
                    assertThat(link.x + link.width).isLessThanOrEqualTo(WIDTH);
                });
                assertThat(page.locator(".menu [aria-current]").count())
                        .as(path)
                        .isEqualTo(1);
                if (page.locator("#siblings nav").count() > 0) {
                    assertThat(page.locator("#siblings [aria-current]").count())
                            .as(path)
                            .isEqualTo(1);
                }
            }
        }
    }

    @Test
    void mainButtonOfEachForm_isInSight_andCoversNoField() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = smallPhone(context);
            int forms = 0;
            for (String path : paths()) {
                if (path.contains("/sightings/") || path.equals("/begin")) {
                    forms++;
                    page.navigate(night.address(path));
                    assertInSight(page, path, ".entry button.main");
                    assertLastFieldCanBeSeen(page, path);
                }
            }
            assertThat(forms).isGreaterThan(20);
        }
    }

    /** Inside the screen, above the menu, and not covered by anything. */
    private static void assertInSight(Page page, String path, String button) {
        assertThat(page.locator(button).count()).as(path).isEqualTo(1);
        BoundingBox box = page.locator(button).boundingBox();
        assertThat(box.y).as(path).isGreaterThanOrEqualTo(0);
        assertThat(box.y + box.height)
                .as(path)
                .isLessThanOrEqualTo(page.locator(".menu").boundingBox().y);
        assertThat(page.evaluate(
                        "([x, y, wanted]) => document.elementFromPoint(x, y).closest(wanted) !== null",
                        List.of(box.x + box.width / 2, box.y + box.height / 2, button)))
                .as("%s: the middle of %s", path, button)
                .isEqualTo(true);
    }

    /** A field that the keyboard goes to is scrolled above the bar with the button. */
    private static void assertLastFieldCanBeSeen(Page page, String path) {
        page.evaluate("document.querySelectorAll('.entry details').forEach(more => more.open = true)");
        Locator fields = page.locator(".entry form").locator("input:not([type=hidden]), select");
        if (fields.count() > 0) {
            fields.last().focus();
            BoundingBox field = fields.last().boundingBox();
            assertThat(field.y + field.height)
                    .as("%s: foot of the last field", path)
                    .isLessThanOrEqualTo(page.locator(".entry .bar").boundingBox().y);
        }
    }

    @Test
    void whatToDoNow_isInSight_whileASightingAndATurnAreAdvised(@TempDir Path own) {
        try (ServedNight turning = ServedNight.byEye(own, "2026-11-25T20:00:00Z");
                BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = smallPhone(context);
            PersonAtThePage.begin(page, turning);
            PersonAtThePage person = new PersonAtThePage(
                    turning, Site.ofDegrees(54.60, -2.90, 240), AxisOffset.ofArcminutes(70, -50), 11);
            for (int step = 0; step < 20 && !(person.advice() instanceof Advice.TurnScrews); step++) {
                page.navigate(turning.address("/"));
                assertInSight(page, person.advice().toString(), "a.main");
                person.follow(page);
            }
            assertThat(person.advice()).isInstanceOf(Advice.TurnScrews.class);
            page.navigate(turning.address("/"));
            assertInSight(page, "a turn", ".done button.main");
        }
    }

    @Test
    void driftForm_hasFiveFieldsAndTheUnitBeforeMore_whichOpensForWhatIsFilledIn() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = smallPhone(context);
            page.navigate(night.address("/sightings/drift?star=rigel&minutes=5"));
            Locator usual = page.locator(".entry form > .field, .entry form > .counted");
            assertThat(usual.count()).isLessThanOrEqualTo(5);
            assertThat(usual.locator("input, select").evaluateAll("all => all.map(field => field.name)"))
                    .isEqualTo(List.of("star", "minutes", "moved", "unit", "toward", "with"));
            assertThat(page.locator(".entry select[name=unit]").isVisible()).isTrue();
            assertThat(page.locator(".entry select[name=view]").isVisible()).isFalse();
            page.navigate(night.address("/sightings/drift?star=rigel&minutes=5&view=mirrored"));
            assertThat(page.locator(".entry select[name=view]").isVisible()).isTrue();
        }
    }

    @Test
    void onALaptop_theMenuIsBesideThePage() {
        try (BrowserContext context = BROWSER.device(Device.LAPTOP)) {
            Page page = context.newPage();
            for (String path : List.of("/", "/tonight", "/sightings/drift", "/more")) {
                page.navigate(night.address(path));
                BoundingBox menu = page.locator(".menu").boundingBox();
                assertThat(page.locator("main").boundingBox().x).as(path).isGreaterThan(menu.x + menu.width);
                page.evaluate("window.scrollTo(0, document.body.scrollHeight)");
                assertThat(page.locator(".menu").boundingBox().y).as(path).isEqualTo(menu.y);
            }
        }
    }
}
