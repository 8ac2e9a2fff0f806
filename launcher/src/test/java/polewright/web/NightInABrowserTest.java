package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.advice.Advice;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.AxisOffset;
import polewright.sky.place.Site;
import polewright.web.Browser.Device;

/** Whole visual nights in real Chromium, with the usual mishaps. */
@Tag("slow")
class NightInABrowserTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final int MOST_STEPS = 40;

    @AutoClose
    private static final Browser BROWSER = new Browser();

    @TempDir
    private Path folder;

    private static void followToStop(Page page, PersonAtThePage person) {
        for (int step = 0; step < MOST_STEPS && !(person.advice() instanceof Advice.Stop); step++) {
            person.follow(page);
        }
        // Either good enough, or as good as another round would leave it; the fix decides which.
        assertThat(page.locator(".steps .step").first()).containsText("Stop");
    }

    private static void assertGoodEnough(PersonAtThePage person) {
        assertThat(person.advice()).isInstanceOf(Advice.Stop.class);
        assertThat(DiscAllowance.VISUAL.contains(person.truth()))
                .as("the real axis, %s, is within what is tolerated", person.truth())
                .isTrue();
    }

    /** The dark palette and the phone are covered by the night with a network failure below. */
    @Test
    void visualNightOnALaptop_endsAtStop_withinTheAllowance() {
        try (ServedNight night = ServedNight.byEye(folder, "2026-11-25T20:00:00Z");
                BrowserContext context = BROWSER.device(Device.LAPTOP)) {
            Page page = context.newPage();
            page.navigate(night.address("/"));
            page.locator("button[name=palette]").click();
            page.locator("html.day").waitFor();
            PersonAtThePage.begin(page, night);
            PersonAtThePage person = new PersonAtThePage(night, LARKFELL, AxisOffset.ofArcminutes(70, -50), 12);
            followToStop(page, person);
            assertGoodEnough(person);
        }
    }

    @Test
    void networkFailure_delaysSubmissions_whichArriveOnceWithTheirOwnTime() throws Exception {
        try (ServedNight night = ServedNight.byEye(folder, "2026-11-25T20:00:00Z");
                BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            PersonAtThePage.begin(page, night);
            assertThat(page.locator("html.day").count()).isZero();
            PersonAtThePage person = new PersonAtThePage(night, LARKFELL, AxisOffset.ofArcminutes(40, 30), 13);
            person.follow(page);
            long before = person.tonight().lastSeq();
            page.navigate(night.address("/sightings/note"));
            context.setOffline(true);
            page.locator("input[name=text]").fill("written in a hole in the network");
            page.locator(".entry button.main").click();
            assertThat(page.locator("#link")).containsText("The laptop does not answer");
            assertThat(person.tonight().lastSeq()).isEqualTo(before);
            context.setOffline(false);
            PersonAtThePage.assertLogged(page, before + 1);
            // The next request, by which time a second submission would have arrived.
            page.navigate(night.address("/"));
            TimeUnit.MILLISECONDS.sleep(1500);
            assertThat(person.tonight().lastSeq()).isEqualTo(before + 1);
            followToStop(page, person);
            assertGoodEnough(person);
        }
    }

    @Test
    void twoDevices_stayInStep_andATurnPressedOnBothIsLoggedOnce() {
        try (ServedNight night = ServedNight.byEye(folder, "2026-11-25T20:00:00Z");
                BrowserContext phone = BROWSER.device(Device.PHONE);
                BrowserContext laptop = BROWSER.device(Device.LAPTOP)) {
            Page onPhone = phone.newPage();
            Page onLaptop = laptop.newPage();
            PersonAtThePage.begin(onPhone, night);
            onLaptop.navigate(night.address("/"));
            PersonAtThePage person = new PersonAtThePage(night, LARKFELL, AxisOffset.ofArcminutes(-60, 45), 15);
            boolean pressedTwice = false;
            for (int step = 0; step < MOST_STEPS && !(person.advice() instanceof Advice.Stop); step++) {
                if (person.advice() instanceof Advice.TurnScrews && !pressedTwice) {
                    pressedTwice = true;
                    long before = person.tonight().lastSeq();
                    person.act(person.advice());
                    onPhone.locator(".done button.main").waitFor();
                    onLaptop.locator(".done button.main").waitFor();
                    onPhone.evaluate("document.querySelector('.done form').requestSubmit()");
                    onLaptop.evaluate("document.querySelector('.done form')?.requestSubmit()");
                    PersonAtThePage.assertLogged(onPhone, before + 1);
                    assertThat(person.tonight().lastSeq()).isEqualTo(before + 1);
                    assertShows(onLaptop, firstStep(onPhone));
                } else {
                    Page here = step % 2 == 0 ? onPhone : onLaptop;
                    person.follow(here);
                    assertShows(here == onPhone ? onLaptop : onPhone, firstStep(here));
                }
            }
            assertThat(pressedTwice).isTrue();
            assertGoodEnough(person);
        }
    }

    /** The first step on the page. */
    private static String firstStep(Page page) {
        return page.locator(".steps .step").first().textContent();
    }

    /** The benchmark measures how quickly; here it only matters that no reload is needed. */
    private static void assertShows(Page page, String result) {
        page.waitForFunction("told => document.querySelector('.steps .step')?.textContent === told", result);
    }

    @Test
    void eventLoggedInATerminal_appearsOnThePage() {
        try (ServedNight night = ServedNight.byEye(folder, "2026-11-25T20:00:00Z");
                BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            PersonAtThePage.begin(page, night);
            String before = firstStep(page);
            assertThat(night.type("sight", "scale", "54").isGood()).isTrue();
            page.waitForFunction("before => document.querySelector('.steps .step')?.textContent !== before", before);
        }
    }

    @Test
    void serverKilledWhileWriting_nightContinuesAfterARestart() throws Exception {
        Path log = folder.resolve("nights.sqlite");
        int pressed = 12;
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            Process server = ServerProcess.start(log, 0);
            int port = ServerProcess.port(server);
            page.navigate("http://127.0.0.1:" + port + "/begin");
            page.locator("#begin-site").fill("54.60,-2.90,240");
            page.locator(".entry button.main").click();
            PersonAtThePage.assertLogged(page, 1);
            for (int note = 1; note <= pressed; note++) {
                page.navigate("http://127.0.0.1:" + port + "/sightings/note");
                page.locator("input[name=text]").fill("note " + note);
                page.locator(".entry button.main").click();
                if (note % 4 == 0) {
                    // At an arbitrary moment of the write.
                    TimeUnit.MILLISECONDS.sleep(3L * note);
                    server.toHandle().destroyForcibly();
                    server.waitFor();
                    server = ServerProcess.start(log, port);
                    assertThat(ServerProcess.port(server)).isEqualTo(port);
                }
                PersonAtThePage.assertLogged(page, note + 1);
            }
            server.destroy();
            server.waitFor();
        }
        assertThat(ServerProcess.notes(log))
                .containsExactlyElementsOf(java.util.stream.IntStream.rangeClosed(1, pressed)
                        .mapToObj(note -> "note " + note)
                        .toList());
    }
}
