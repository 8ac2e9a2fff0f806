package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.mount.AxisOffset;
import polewright.operations.PierNights;
import polewright.web.Browser.Device;

/** Tonight and earlier nights, on a phone. */
@Tag("slow")
class NightsPagesTest {
    private static final int EARLIER = 5;
    private static final int TONIGHT = 6;

    @TempDir
    private static Path folder;

    @AutoClose
    private static final Browser BROWSER = new Browser();

    private static ServedNight night;

    @BeforeAll
    static void serveSixNights() {
        night = new ServedNight(folder, "2025-06-20T22:00:00Z");
        PierNights.written(folder, EARLIER, 30, AxisOffset.ofArcminutes(1.5, -2), 0)
                .forEach(file -> type("log", "import", file.toString()));
        type("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        type("note", "dew");
    }

    @AfterAll
    static void close() {
        night.close();
    }

    private static void type(String... words) {
        CommandOutcome result = night.type(words);
        assertThat(result.isGood()).as("%s", result).isTrue();
    }

    private static Page page(BrowserContext context, String path) {
        Page page = context.newPage();
        page.navigate(night.address(path));
        return page;
    }

    @Test
    void onlyTonightsEvents_canBeUndone() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = page(context, "/nights");
            assertThat(page.locator("h2").first()).hasText("Tonight");
            assertThat(page.locator(".events button")).hasCount(1);
            assertThat(page.locator("h2")).containsText(new String[] {"Write a note"});

            page.locator("select[name=night]").selectOption("3");
            page.locator("button:text('Show')").click();

            assertThat(page.locator("h2").first()).containsText("Night 3, 2025-03-11, Larkfell");
            assertThat(page.locator(".events li")).not().hasCount(0);
            assertThat(page.locator(".events button")).hasCount(0);
            assertThat(page.locator("input[name=text]")).hasCount(0);
            assertThat(page.locator("select[name=night]")).hasValue("3");
        }
    }

    @Test
    void twoNights_areComparedAsByTheCommand() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = page(context, "/nights?night=4");
            page.locator("a:text('Compare with another night')").click();
            // The preceding night is offered.
            assertThat(page.locator("select[name=with]")).hasValue("3");
            page.locator("button:text('Compare them')").click();

            String typed = night.type("log", "compare", "4", "3").out();
            assertThat(page.locator("thead th")).hasText(new String[] {"night 3", "night 4"});
            assertThat(page.locator("tbody tr")).hasCount(9);
            assertThat(page.locator("tbody tr").first()).containsText("11 Mar 2025, 20:00 UTC");
            String between = typed.substring(typed.indexOf("Between them"))
                    .replaceAll("\\s+", " ")
                    .strip();
            assertThat(page.locator("main")).containsText(between);
        }
    }

    @Test
    void pierMotion_isDrawnAndDescribed() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = page(context, "/nights");
            page.locator("a:text('How pier and wedge move')").click();

            assertThat(page.locator(".drawing svg g.east")).hasCount(1);
            String typed = night.type("log", "seasons", "--night", "1").out();
            String motion = typed.substring(typed.indexOf("From 10 January")).replaceAll("\\s+", " ");
            String rate = motion.substring(0, motion.indexOf(". To undo"));
            assertThat(page.locator("main")).containsText(rate);
            assertThat(page.locator("main")).containsText("Night 5, 2025-05-10: found");
            assertThat(page.locator("main")).containsText("Night 6, 2025-06-20: no fix.");
        }
    }

    @Test
    void downloadedNight_matchesTheCommandsExport() throws IOException {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = page(context, "/nights?night=2");
            Download download = page.waitForDownload(
                    () -> page.locator("a:text('Download')").click());
            Path typed = folder.resolve("typed.jsonl");
            type("log", "export", typed.toString(), "--night", "2");

            assertThat(download.suggestedFilename()).isEqualTo("night-2.jsonl");
            assertThat(Files.readString(download.path())).isEqualTo(Files.readString(typed));
        }
    }

    @Test
    void unknownNight_isReported_andNotDownloaded() {
        try (BrowserContext context = BROWSER.device(Device.PHONE)) {
            for (String word : List.of("99", "..%2F..", "1;2")) {
                Page page = page(context, "/nights?night=" + word);
                assertThat(page.locator("main")).containsText("That night does not exist. Choose one below.");
                page.navigate(night.address("/nights/download?night=" + word));
                assertThat(page.locator("main")).containsText("That night does not exist.");
                page.close();
            }
        }
    }

    @Test
    void latestNight_isTonight() {
        assertThat(night.session().tonight().orElseThrow().id().number()).isEqualTo(TONIGHT);
    }
}
