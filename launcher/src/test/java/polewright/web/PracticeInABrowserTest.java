package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.advice.Advice;
import polewright.simulation.practice.PracticeState;
import polewright.web.Browser.Device;

/** A practice night from start to debrief, using only the pages. */
@Tag("slow")
class PracticeInABrowserTest {
    private static final int MOST_STEPS = 40;

    @AutoClose
    private static final Browser BROWSER = new Browser();

    @TempDir
    private Path folder;

    @Test
    void visualPractice_reachesStop_andIsDebriefed() {
        try (ServedNight night = new ServedNight(folder, "2026-11-26T10:00:00Z");
                BrowserContext context = BROWSER.device(Device.PHONE)) {
            Page page = context.newPage();
            page.navigate(night.address("/practice"));
            page.locator("form[action='/do/practice-begin'] button").click();
            page.locator("text=What to do now, and how to log it").waitFor();
            PracticePlayer player = new PracticePlayer(page, night);
            int step = 0;
            while (step < MOST_STEPS && !(player.advice() instanceof Advice.Stop)) {
                player.follow();
                step++;
            }
            assertThat(player.advice()).isInstanceOf(Advice.Stop.class);
            page.navigate(night.address("/practice/night/"));
            assertThat(page.locator(".steps .step").first()).containsText("Good enough");
            PracticeState played = player.game();
            assertThat(night.practice()
                            .tonight()
                            .orElseThrow()
                            .state()
                            .allowance()
                            .contains(played.truth()))
                    .as("the real axis, %s, is within what is tolerated", played.truth())
                    .isTrue();
            page.navigate(night.address("/practice/debrief"));
            assertThat(page.locator("pre")).containsText("Within the allowance");
        }
    }
}
