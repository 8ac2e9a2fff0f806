package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.SightingKind;
import polewright.operations.practice.PracticeNight;
import polewright.web.Browser.Device;

/** A camera practice night from start to debrief; every input and every reading is on the pages. */
@Tag("slow")
class PracticeByCameraInABrowserTest {
    private static final int MOST_STEPS = 25;
    private static final LocatorAssertions.ContainsTextOptions SOON =
            new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

    @AutoClose
    private static final Browser BROWSER = new Browser();

    @TempDir
    private Path folder;

    // Set once the device is known.
    @SuppressWarnings("NullAway.Init")
    private ServedNight night;

    @SuppressWarnings("NullAway.Init")
    private Page page;

    @ParameterizedTest
    @CsvSource({"PHONE, dark", "LAPTOP, day"})
    void cameraPractice_reachesStop_andIsDebriefed(Device device, String palette) {
        try (ServedNight served = new ServedNight(folder, "2026-11-26T10:00:00Z");
                BrowserContext context = BROWSER.device(device)) {
            night = served;
            page = context.newPage();
            page.navigate(night.address("/practice"));
            if (palette.equals("day")) {
                page.locator("button[name=palette]").click();
                page.locator("html.day").waitFor();
            }
            page.locator("form[action='/do/practice-begin'] input[name=camera]").check();
            page.locator("form[action='/do/practice-begin'] button").click();
            page.locator("text=What to do now, and how to log it").waitFor();
            PracticePlayer player = new PracticePlayer(page, night);
            int step = 0;
            while (step < MOST_STEPS && !(player.advice() instanceof Advice.Stop)) {
                if (player.advice() instanceof Advice.TakeSighting take && take.kind() == SightingKind.FRAMES) {
                    takeFrames();
                } else if (player.advice() instanceof Advice.TurnScrews turn && player.followsFrames()) {
                    turnWithFrames(player, turn);
                } else {
                    player.follow();
                }
                step++;
            }
            assertThat(player.advice()).isInstanceOf(Advice.Stop.class);
            page.navigate(night.address("/practice/night/"));
            assertThat(page.locator(".steps .step").first()).containsText("Good enough");
            page.navigate(night.address("/practice/debrief"));
            assertThat(page.locator("pre")).containsText("Within the allowance");
        }
    }

    private long lastSeq() {
        return night.practice().tonight().orElseThrow().lastSeq();
    }

    private int frames() {
        return PracticeNight.current(night.session().workbench())
                .map(practice -> (int) practice.state().done().stream()
                        .filter(done ->
                                done.seen() instanceof polewright.simulation.practice.ObservedReadings.FrameTaken)
                        .count())
                .orElse(0);
    }

    /** Takes a frame on the Practice page, and waits until the Frames page has processed it. */
    private void take(int turnedDeg) {
        int number = frames() + 1;
        page.navigate(night.address("/practice"));
        page.waitForResponse(
                response -> response.url().endsWith("/practice") && response.status() == 200,
                () -> page.locator("form[action='/do/practice-frame'] button", new Page.LocatorOptions())
                        .getByText(
                                turnedDeg + "°", new com.microsoft.playwright.Locator.GetByTextOptions().setExact(true))
                        .click());
        page.navigate(night.address("/practice/night/frames"));
        assertThat(page.locator("#frame")).containsText(String.format("frame-%02d.fits", number), SOON);
    }

    private void takeFrames() {
        long before = lastSeq();
        page.navigate(night.address("/practice/night/"));
        page.locator("a.main").click();
        assertThat(page.locator("h1")).containsText("Frames");
        take(-30);
        take(0);
        assertThat(page.locator("#frame"))
                .containsText(java.util.regex.Pattern.compile("Axis: |Moved since it was found"), SOON);
        take(30);
        page.navigate(night.address("/practice/night/nights"));
        assertThat(lastSeq()).isGreaterThan(before);
    }

    /** Turns as advised, takes a frame, and continues with the turns that it says remain. */
    private void turnWithFrames(PracticePlayer player, Advice.TurnScrews turn) {
        long before = lastSeq();
        player.turnOnly(turn);
        take(30);
        assertThat(page.locator("#frame")).containsText("Moved since it was found", SOON);
        page.navigate(night.address("/practice/night/"));
        page.locator(".done button.main").click();
        assertThat(page.locator(".said")).containsText("Logged #", SOON);
        assertThat(lastSeq()).isGreaterThan(before);
    }
}
