package polewright.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.app.web.Browser.Device;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;

/** What is pressed is kept by the page until it is taken, or the person has decided: nothing goes without a word. */
class KeptPressesTest {
    private static final String STUCK = "#stuck";
    private static Browser browser;

    @TempDir
    private Path folder;

    @BeforeAll
    static void openBrowser() {
        browser = new Browser();
    }

    @AfterAll
    static void closeBrowser() {
        browser.close();
    }

    private static ServedNight begun(Path folder, Instant now) {
        ServedNight night = new ServedNight(folder, now.toString());
        assertThat(night.type("begin", "--site", "54.60,-2.90,240").isGood()).isTrue();
        return night;
    }

    private ServedNight begun() {
        return begun(folder, Instant.parse("2026-11-26T20:00:00Z"));
    }

    private static void write(Page page, String text) {
        page.locator("input[name=text]").fill(text);
        page.locator(".entry button.main").click();
    }

    private static List<LoggedEvent> events(NightDesk desk) {
        return desk.tonight().orElseThrow().events();
    }

    private static long waiting(Page page) {
        return ((Number) page.evaluate("JSON.parse(localStorage.getItem('polewright-outbox') || '[]').length"))
                .longValue();
    }

    @Test
    void aDeviceThatIsLetInNoMoreKeepsWhatWasPressed_andSendsItOnceItIsPairedAgain() {
        try (KnockedDoor server = new KnockedDoor(folder);
                BrowserContext phone = browser.phoneThatWentOn()) {
            assertThat(server.desk()
                            .run(List.of("begin", "--site", "54.60,-2.90,240"))
                            .isGood())
                    .isTrue();
            Page page = phone.newPage();
            String shared = "http://" + KnockedDoor.SHARED + ":" + server.port();
            page.navigate(shared + "/");
            page.locator("#code").fill(server.door().code().grouped());
            page.locator("button.main").click();
            page.locator("nav").waitFor();
            page.navigate(shared + "/sightings/note");
            assertThat(server.desk().run(List.of("devices", "revoke", "all")).isGood())
                    .isTrue();
            write(page, "pressed by a stranger");
            assertThat(page.locator(STUCK)).containsText("not paired any more");
            assertThat(events(server.desk())).hasSize(1);
            page.locator("#stuck-again").click();
            page.locator("#code").fill(server.door().code().grouped());
            page.locator("button.main").click();
            PersonAtThePage.isLogged(page, 2);
            assertThat(waiting(page)).isZero();
            assertThat(events(server.desk())).hasSize(2);
        }
    }

    @Test
    void whileTheLogCannotBeReadWhatWasPressedIsKept_withTheReason_andLoggedOnceItCan() throws Exception {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/sightings/note"));
            Path log = night.desk().workbench().defaultLog();
            byte[] whole = Files.readAllBytes(log);
            night.damageLog();
            write(page, "while it was damaged");
            assertThat(page.locator(STUCK)).containsText("nights.sqlite");
            assertThat(page.locator(STUCK)).containsText("kept here");
            night.replaceLog(whole);
            PersonAtThePage.isLogged(page, 2);
            assertThat(page.locator(STUCK)).isHidden();
            assertThat(events(night.desk())).hasSize(2);
        }
    }

    @Test
    void whenTheLinkDropsAfterItWasLoggedTheNextTryIsAnsweredAndAddsNothing() {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/sightings/note"));
            AtomicInteger tries = new AtomicInteger();
            page.route("**/do/note", route -> {
                if (tries.getAndIncrement() < 2) {
                    route.fetch(new Route.FetchOptions().setMaxRedirects(0));
                    route.abort();
                } else {
                    route.resume();
                }
            });
            write(page, "heard, and not known to be");
            PersonAtThePage.isLogged(page, 2);
            assertThat(tries.get()).isGreaterThan(2);
            assertThat(waiting(page)).isZero();
            assertThat(events(night.desk())).hasSize(2);
        }
    }

    @Test
    void whatIsNeitherTakenNorRefusedIsForThePersonToDecide() {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/sightings/note"));
            AtomicInteger tries = new AtomicInteger();
            page.route("**/do/note", route -> {
                tries.incrementAndGet();
                route.fulfill(new Route.FulfillOptions()
                        .setStatus(500)
                        .setContentType("text/html")
                        .setBody("<main><p class=complaint>A cog is broken.</p></main>"));
            });
            write(page, "to be dropped");
            assertThat(page.locator(STUCK)).containsText("A cog is broken.");
            assertThat(page.locator(".entry button.main")).isDisabled();
            page.locator("#stuck-again").click();
            page.waitForCondition(() -> tries.get() == 2);
            page.locator("#stuck-drop").click();
            assertThat(page.locator(STUCK)).isHidden();
            assertThat(waiting(page)).isZero();
            page.unroute("**/do/note");
            write(page, "written anew");
            PersonAtThePage.isLogged(page, 2);
            assertThat(events(night.desk()).get(1).event()).isEqualTo(new NightEvent.Noted("written anew"));
        }
    }

    @Test
    void whatIsSentLateLeavesAloneWhatIsBeingFilledInMeanwhile() {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/work"));
            phone.setOffline(true);
            page.locator("form[action='/do/allow-limit'] input[name=arcmin]").fill("7");
            page.locator("form[action='/do/allow-limit'] button.main").click();
            assertThat(page.locator("#link")).containsText("kept here");
            page.locator("form[action='/do/target'] input[name=body]").fill("half a wo");
            phone.setOffline(false);
            assertThat(page.locator("#link")).containsText("Logged #2");
            assertThat(page.locator("form[action='/do/target'] input[name=body]"))
                    .hasValue("half a wo");
            assertThat(waiting(page)).isZero();
        }
    }

    @Test
    void whatIsRefusedLateWaitsUntilThePersonHasTimeForIt() {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/work"));
            phone.setOffline(true);
            page.locator("form[action='/do/allow-limit'] input[name=arcmin]").fill("about seven");
            page.locator("form[action='/do/allow-limit'] button.main").click();
            page.locator("form[action='/do/target'] input[name=body]").fill("half a wo");
            phone.setOffline(false);
            assertThat(page.locator(STUCK)).containsText("about seven");
            assertThat(page.locator("form[action='/do/target'] input[name=body]"))
                    .hasValue("half a wo");
            page.locator("#stuck-again").click();
            assertThat(page.locator(".complaint")).containsText("about seven");
            assertThat(page.locator("input[name=arcmin]")).hasValue("about seven");
            assertThat(events(night.desk())).hasSize(1);
        }
    }

    @Test
    void aRefusalIsNotWipedByWhatIsTakenAfterIt() {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/work"));
            phone.setOffline(true);
            page.locator("form[action='/do/allow-limit'] input[name=arcmin]").fill("about seven");
            page.locator("form[action='/do/allow-limit'] button.main").click();
            page.locator("form[action='/do/target'] input[name=body]").fill("vega");
            page.locator("form[action='/do/target'] button.main").click();
            phone.setOffline(false);
            assertThat(page.locator("#link")).containsText("Logged #2");
            assertThat(page.locator(".complaint")).containsText("about seven");
            assertThat(page.locator("input[name=arcmin]")).hasValue("about seven");
            assertThat(waiting(page)).isZero();
        }
    }

    @Test
    void aLatePressOfADeviceThatIsLetInNoMoreAsksToBePairedAgain() throws Exception {
        try (KnockedDoor server = new KnockedDoor(folder);
                BrowserContext phone = browser.phoneThatWentOn()) {
            server.desk().run(List.of("begin", "--site", "54.60,-2.90,240"));
            Page page = phone.newPage();
            String shared = "http://" + KnockedDoor.SHARED + ":" + server.port();
            page.navigate(shared + "/");
            page.locator("#code").fill(server.door().code().grouped());
            page.locator("button.main").click();
            page.locator("nav").waitFor();
            page.navigate(shared + "/sightings/clamp");
            phone.setOffline(true);
            page.locator(".entry button.main").click();
            assertThat(page.locator("#link")).containsText("kept here");
            server.desk().run(List.of("devices", "revoke", "all"));
            TimeUnit.MILLISECONDS.sleep(5500);
            phone.setOffline(false);
            assertThat(page.locator(STUCK)).containsText("pair it again");
            assertThat(waiting(page)).isEqualTo(1);
        }
    }

    @Test
    void whatIsSentAgainByHandAndIsNotNowIsSentAgainByItself() {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/sightings/note"));
            AtomicInteger tries = new AtomicInteger();
            page.route("**/do/note", route -> {
                int status = tries.getAndIncrement() == 0 ? 500 : 503;
                if (tries.get() > 2) {
                    route.resume();
                } else {
                    route.fulfill(new Route.FulfillOptions()
                            .setStatus(status)
                            .setContentType("text/html")
                            .setBody("<main><p class=complaint>Status " + status + ".</p></main>"));
                }
            });
            write(page, "at the third try");
            assertThat(page.locator(STUCK)).containsText("Status 500.");
            page.locator("#stuck-again").click();
            PersonAtThePage.isLogged(page, 2);
            assertThat(page.locator(STUCK)).isHidden();
        }
    }

    @Test
    void whatAnotherTabHasSentIsNoLongerToldAsKept() {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page cut = phone.newPage();
            cut.navigate(night.address("/sightings/note"));
            cut.route("**/do/note", Route::abort);
            write(cut, "sent by the other tab");
            assertThat(cut.locator("#link")).containsText("kept here");
            Page other = phone.newPage();
            other.navigate(night.address("/"));
            PersonAtThePage.isLogged(other, 2);
            assertThat(cut.locator("#link")).isHidden();
            assertThat(events(night.desk())).hasSize(2);
        }
    }

    @Test
    void backFromBeyondTheWiFiAFileThatWasChosenIsStillChosen() throws IOException {
        Path frame = Files.write(folder.resolve("frame.fits"), new byte[] {1, 2, 3});
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/frames"));
            page.locator("input[type=file]").setInputFiles(frame);
            phone.setOffline(true);
            page.waitForResponse("**/frames*", () -> phone.setOffline(false));
            assertThat(page.locator("#frame")).isVisible();
            assertThat(page.evaluate("document.querySelector('input[type=file]').files.length"))
                    .isEqualTo(1);
        }
    }

    @Test
    void whatWasSaidOfTheLastPressStaysWhenThePageIsAskedForAnew_untilSomethingElseIsLogged() {
        try (ServedNight night = begun();
                BrowserContext phone = browser.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/sightings/note"));
            write(page, "said");
            PersonAtThePage.isLogged(page, 2);
            page.evaluate("document.querySelector('h1').dataset.old = 'yes'");
            page.evaluate("window.dispatchEvent(new Event('online'))");
            assertThat(page.locator("h1[data-old]")).hasCount(0);
            assertThat(page.locator(".said")).containsText("Logged #2");
            assertThat(night.type("note", "typed at the laptop").isGood()).isTrue();
            assertThat(page.locator(".said")).hasCount(0);
        }
    }

    /** The page that sends it is another than the one on which it was pressed, and knows nothing of clocks yet. */
    @Test
    void whatIsSentLateCountsByTheLaptopsClock_howeverWrongThePhonesIs() throws Exception {
        Instant now = Clock.systemUTC().instant();
        try (ServedNight night = begun(folder, now);
                BrowserContext phone = browser.device(Device.PHONE)) {
            night.wait(Duration.ofMinutes(1));
            phone.clock()
                    .setSystemTime(now.toEpochMilli() + Duration.ofMinutes(10).toMillis());
            Page page = phone.newPage();
            page.navigate(night.address("/sightings/clamp"));
            phone.setOffline(true);
            Instant pressed = Clock.systemUTC().instant();
            page.locator(".entry button.main").click();
            assertThat(page.locator("#link")).containsText("kept here");
            TimeUnit.MILLISECONDS.sleep(5500);
            page.close();
            phone.setOffline(false);
            Page next = phone.newPage();
            next.route("**/clock", route -> {
                next.waitForTimeout(700);
                route.resume();
            });
            next.navigate(night.address("/"));
            PersonAtThePage.isLogged(next, 2);
            assertThat(events(night.desk()).get(1).at().toEpochMilli())
                    .isCloseTo(pressed.toEpochMilli(), within(2000L));
        }
    }
}
