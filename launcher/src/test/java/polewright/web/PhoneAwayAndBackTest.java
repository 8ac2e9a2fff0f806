package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.web.Browser.Device;

/** Problems of a phone at the wedge: a warning, sleep, the edge of Wi-Fi range, a clock that is off. */
@Tag("slow")
class PhoneAwayAndBackTest {
    @AutoClose
    private static final Browser BROWSER = new Browser();

    @TempDir
    private Path folder;

    @Test
    void overHttps_phoneStaysAwake_andGivesItsPosition() {
        try (KnockedDoor server = new KnockedDoor(folder, true);
                BrowserContext phone = BROWSER.phoneThatWentOn()) {
            Page page = phone.newPage();
            page.navigate("http://" + KnockedDoor.SHARED + ":" + server.port() + "/");
            assertThat(page.url()).startsWith("https://" + KnockedDoor.SHARED);
            page.locator("#code").fill(server.accessControl().code().grouped());
            page.locator("button.main").click();
            assertThat(page.locator("#awake")).hasText("The screen stays on.");
            assertThat(page.evaluate("isSecureContext")).isEqualTo(true);
            assertThat(phone.cookies()).anySatisfy(cookie -> {
                assertThat(cookie.name).isEqualTo("__Host-polewright");
                assertThat(cookie.secure).isTrue();
                assertThat(cookie.httpOnly).isTrue();
            });
            page.locator("a.main").click();
            page.locator("#here").click();
            assertThat(page.locator("#begin-site")).hasValue("54.6000,-2.9000");
        }
    }

    @Test
    void overHttp_pageSaysWhatToSetInstead() {
        try (KnockedDoor server = new KnockedDoor(folder);
                BrowserContext phone = BROWSER.phoneThatWentOn()) {
            Page page = phone.newPage();
            page.navigate("http://" + KnockedDoor.SHARED + ":" + server.port() + "/");
            page.locator("#code").fill(server.accessControl().code().grouped());
            page.locator("button.main").click();
            assertThat(page.locator("#awake")).containsText("Set the device's own screen timeout");
            assertThat(page.evaluate("isSecureContext")).isEqualTo(false);
        }
    }

    private static void begin(ServedNight night) {
        assertThat(night.type("begin", "--site", "54.60,-2.90,240").status()).isZero();
    }

    @Test
    void phoneBackInWiFiRange_showsTheCurrentState() {
        try (ServedNight night = new ServedNight(folder, "2026-11-26T20:00:00Z");
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/"));
            assertThat(beginning(page)).isVisible();
            phone.setOffline(true);
            begin(night);
            phone.setOffline(false);
            assertThat(beginning(page)).hasCount(0);
            // Updates then arrive by themselves again.
            String before = page.locator("main").textContent();
            assertThat(night.type("sight", "compass", "2").status()).isZero();
            assertThat(page.locator("main")).not().hasText(before);
            assertThat(night.session().tonight().orElseThrow().events()).hasSize(2);
        }
    }

    private static Locator beginning(Page page) {
        return page.getByText("Begin a night");
    }

    @Test
    void resumedPage_showsTheCurrentState() {
        try (ServedNight night = new ServedNight(folder, "2026-11-26T20:00:00Z");
                BrowserContext phone = BROWSER.device(Device.PHONE)) {
            Page page = phone.newPage();
            page.navigate(night.address("/"));
            assertThat(beginning(page)).isVisible();
            CDPSession session = phone.newCDPSession(page);
            lifecycle(session, "frozen");
            begin(night);
            lifecycle(session, "active");
            assertThat(beginning(page)).hasCount(0);
            assertThat(night.session().tonight().orElseThrow().events()).hasSize(1);
        }
    }

    private static void lifecycle(CDPSession session, String state) {
        JsonObject arguments = new JsonObject();
        arguments.addProperty("state", state);
        session.send("Page.setWebLifecycleState", arguments);
    }

    @Test
    void clockOffByMoreThanTwoSeconds_isReported() {
        try (ServedNight night = new ServedNight(folder, "2026-11-26T20:00:00Z")) {
            for (long ahead : List.of(-20L, 20L)) {
                try (BrowserContext phone = BROWSER.device(Device.PHONE)) {
                    phone.clock().setSystemTime(Clock.systemUTC().millis() + ahead * 1000);
                    Page page = phone.newPage();
                    page.navigate(night.address("/"));
                    assertThat(page.locator("#clock"))
                            .containsText(ahead < 0 ? "behind the laptop's" : "ahead of the laptop's");
                }
            }
            try (BrowserContext phone = BROWSER.device(Device.PHONE)) {
                Page page = phone.newPage();
                page.waitForResponse("**/clock", () -> page.navigate(night.address("/")));
                assertThat(page.locator("#clock")).isHidden();
            }
        }
    }
}
