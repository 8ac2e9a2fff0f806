package polewright.web;

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
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.web.Browser.Device;
import polewright.web.session.NightSession;

/** The page keeps a submission until the server accepts it or the user decides; none is dropped silently. */
@Tag("slow")
class KeptPressesTest {
    private static final String STUCK = "#stuck";

    @AutoClose
    private static final Browser BROWSER = new Browser();

    @TempDir
    private Path folder;

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

    private static List<LoggedEvent> events(NightSession session) {
        return session.tonight().orElseThrow().events();
    }

    private static Page at(BrowserContext phone, ServedNight night, String path) {
        Page page = phone.newPage();
        page.navigate(night.address(path));
        return page;
    }

    private static Page paired(BrowserContext phone, KnockedDoor server, String path) {
        Page page = phone.newPage();
        String shared = "http://" + KnockedDoor.SHARED + ":" + server.port();
        page.navigate(shared + "/");
        giveCode(page, server);
        page.locator(".menu").waitFor();
        page.navigate(shared + path);
        return page;
    }

    private static void giveCode(Page page, KnockedDoor server) {
        page.locator("#code").fill(server.accessControl().code().grouped());
        page.locator("button.main").click();
    }

    private static void setLimit(Page page, String arcmin) {
        page.locator("form[action='/do/allow-limit'] input[name=arcmin]").fill(arcmin);
        page.locator("form[action='/do/allow-limit'] button.main").click();
    }

    private static void answer(Route route, int status, String sentence) {
        route.fulfill(new Route.FulfillOptions()
                .setStatus(status)
                .setContentType("text/html")
                .setBody("<main><p class=complaint>" + sentence + "</p></main>"));
    }

    private static long outboxSize(Page page) {
        return ((Number) page.evaluate("JSON.parse(localStorage.getItem('polewright-outbox') || '[]').length"))
                .longValue();
    }

    @Test
    void revokedDevice_keepsSubmissions_andSendsThemOncePairedAgain() {
        try (KnockedDoor server = new KnockedDoor(folder);
                BrowserContext phone = BROWSER.phoneThatWentOn()) {
            assertThat(CommandOutcome.run(server.session().workbench(), "begin", "--site", "54.60,-2.90,240")
                            .isGood())
                    .isTrue();
            Page page = paired(phone, server, "/sightings/note");
            assertThat(CommandOutcome.run(server.session().workbench(), "devices", "revoke", "all")
                            .isGood())
                    .isTrue();
            write(page, "pressed by a stranger");
            assertThat(page.locator(STUCK)).containsText("not paired any more");
            assertThat(events(server.session())).hasSize(1);
            page.locator("#stuck-again").click();
            giveCode(page, server);
            PersonAtThePage.assertLogged(page, 2);
            assertThat(outboxSize(page)).isZero();
            assertThat(events(server.session())).hasSize(2);
        }
    }

    @Test
    void unreadableLog_keepsSubmissionsWithTheReason_untilTheyCanBeLogged() throws Exception {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/sightings/note");
            Path log = night.session().workbench().defaultLog();
            byte[] whole = Files.readAllBytes(log);
            night.damageLog();
            write(page, "while it was damaged");
            assertThat(page.locator(STUCK)).containsText("nights.sqlite");
            assertThat(page.locator(STUCK)).containsText("kept here");
            night.replaceLog(whole);
            PersonAtThePage.assertLogged(page, 2);
            assertThat(page.locator(STUCK)).isHidden();
            assertThat(events(night.session())).hasSize(2);
        }
    }

    @Test
    void retryAfterALostAnswer_isAnswered_andLogsNothingNew() {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/sightings/note");
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
            PersonAtThePage.assertLogged(page, 2);
            assertThat(tries.get()).isGreaterThan(2);
            assertThat(outboxSize(page)).isZero();
            assertThat(events(night.session())).hasSize(2);
        }
    }

    @Test
    void unresolvedSubmission_isLeftToTheUser() {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/sightings/note");
            AtomicInteger tries = new AtomicInteger();
            page.route("**/do/note", route -> {
                tries.incrementAndGet();
                answer(route, 500, "A cog is broken.");
            });
            write(page, "to be dropped");
            assertThat(page.locator(STUCK)).containsText("A cog is broken.");
            assertThat(page.locator(".entry button.main")).isDisabled();
            page.locator("#stuck-again").click();
            page.waitForCondition(() -> tries.get() == 2);
            page.locator("#stuck-drop").click();
            assertThat(page.locator(STUCK)).isHidden();
            assertThat(outboxSize(page)).isZero();
            page.unroute("**/do/note");
            write(page, "written anew");
            PersonAtThePage.assertLogged(page, 2);
            assertThat(events(night.session()).get(1).event()).isEqualTo(new NightEvent.Noted("written anew"));
        }
    }

    @Test
    void lateSubmission_doesNotDisturbAFormBeingFilledIn() {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/work");
            phone.setOffline(true);
            setLimit(page, "7");
            assertThat(page.locator("#link")).containsText("kept here");
            page.locator("form[action='/do/target'] input[name=body]").fill("half a wo");
            phone.setOffline(false);
            assertThat(page.locator("#link")).containsText("Logged #2");
            assertThat(page.locator("form[action='/do/target'] input[name=body]"))
                    .hasValue("half a wo");
            assertThat(outboxSize(page)).isZero();
        }
    }

    @Test
    void lateRejection_waitsUntilTheUserIsFree() {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/work");
            phone.setOffline(true);
            setLimit(page, "about seven");
            page.locator("form[action='/do/target'] input[name=body]").fill("half a wo");
            phone.setOffline(false);
            assertThat(page.locator(STUCK)).containsText("about seven");
            assertThat(page.locator("form[action='/do/target'] input[name=body]"))
                    .hasValue("half a wo");
            page.locator("#stuck-again").click();
            assertThat(page.locator(".complaint")).containsText("about seven");
            assertThat(page.locator("input[name=arcmin]")).hasValue("about seven");
            assertThat(events(night.session())).hasSize(1);
        }
    }

    @Test
    void rejection_isNotClearedByALaterSuccess() {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/work");
            phone.setOffline(true);
            setLimit(page, "about seven");
            page.locator("form[action='/do/target'] input[name=body]").fill("vega");
            page.locator("form[action='/do/target'] button.main").click();
            phone.setOffline(false);
            assertThat(page.locator("#link")).containsText("Logged #2");
            assertThat(page.locator(".complaint")).containsText("about seven");
            assertThat(page.locator("input[name=arcmin]")).hasValue("about seven");
            assertThat(outboxSize(page)).isZero();
        }
    }

    @Test
    void lateSubmissionFromARevokedDevice_asksToPairAgain() throws Exception {
        try (KnockedDoor server = new KnockedDoor(folder);
                BrowserContext phone = BROWSER.phoneThatWentOn()) {
            CommandOutcome.run(server.session().workbench(), "begin", "--site", "54.60,-2.90,240");
            Page page = paired(phone, server, "/sightings/clamp");
            phone.setOffline(true);
            page.locator(".entry button.main").click();
            assertThat(page.locator("#link")).containsText("kept here");
            CommandOutcome.run(server.session().workbench(), "devices", "revoke", "all");
            TimeUnit.MILLISECONDS.sleep(5500);
            phone.setOffline(false);
            assertThat(page.locator(STUCK)).containsText("pair it again");
            assertThat(outboxSize(page)).isEqualTo(1);
        }
    }

    @Test
    void failedManualRetry_isRetriedAutomatically() {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/sightings/note");
            AtomicInteger tries = new AtomicInteger();
            page.route("**/do/note", route -> {
                int status = tries.getAndIncrement() == 0 ? 500 : 503;
                if (tries.get() > 2) {
                    route.resume();
                } else {
                    answer(route, status, "Status " + status + ".");
                }
            });
            write(page, "at the third try");
            assertThat(page.locator(STUCK)).containsText("Status 500.");
            page.locator("#stuck-again").click();
            PersonAtThePage.assertLogged(page, 2);
            assertThat(page.locator(STUCK)).isHidden();
        }
    }

    @Test
    void submissionSentByAnotherTab_isNoLongerShownAsPending() {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page cut = at(phone, night, "/sightings/note");
            cut.route("**/do/note", Route::abort);
            write(cut, "sent by the other tab");
            assertThat(cut.locator("#link")).containsText("kept here");
            Page other = at(phone, night, "/");
            PersonAtThePage.assertLogged(other, 2);
            assertThat(cut.locator("#link")).isHidden();
            assertThat(events(night.session())).hasSize(2);
        }
    }

    @Test
    void chosenFile_staysChosenAfterTheNetworkReturns() throws IOException {
        Path frame = Files.write(folder.resolve("frame.fits"), new byte[] {1, 2, 3});
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/frames");
            page.locator("input[type=file]").setInputFiles(frame);
            phone.setOffline(true);
            page.waitForResponse("**/frames*", () -> phone.setOffline(false));
            assertThat(page.locator("#frame")).isVisible();
            assertThat(page.evaluate("document.querySelector('input[type=file]').files.length"))
                    .isEqualTo(1);
        }
    }

    @Test
    void lastResult_survivesAReload_untilTheNextEvent() {
        try (ServedNight night = begun();
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = at(phone, night, "/sightings/note");
            write(page, "said");
            PersonAtThePage.assertLogged(page, 2);
            page.evaluate("document.querySelector('h1').dataset.old = 'yes'");
            page.evaluate("window.dispatchEvent(new Event('online'))");
            assertThat(page.locator("h1[data-old]")).hasCount(0);
            assertThat(page.locator(".said")).containsText("Logged #2");
            assertThat(night.type("note", "typed at the laptop").isGood()).isTrue();
            assertThat(page.locator(".said")).hasCount(0);
        }
    }

    /**
     * It is sent from a page other than the one on which it was pressed, and that page has not yet compared clocks.
     */
    @Test
    void lateSubmission_isTimedByTheLaptopsClock() throws Exception {
        Instant now = Clock.systemUTC().instant();
        try (ServedNight night = begun(folder, now);
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            night.wait(Duration.ofMinutes(1));
            phone.clock()
                    .setSystemTime(now.toEpochMilli() + Duration.ofMinutes(10).toMillis());
            Page page = at(phone, night, "/sightings/clamp");
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
            PersonAtThePage.assertLogged(next, 2);
            assertThat(events(night.session()).get(1).at().toEpochMilli())
                    .isCloseTo(pressed.toEpochMilli(), within(2000L));
        }
    }
}
