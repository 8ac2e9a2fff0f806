package polewright.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.app.practice.PracticeNight;
import polewright.app.text.TurnWords;
import polewright.app.web.Browser.Device;
import polewright.axis.advice.Advice;
import polewright.axis.advice.ScrewTurn;
import polewright.rehearsal.practice.PracticeState;
import polewright.rehearsal.practice.Seen;

/** The game from its beginning to its debrief, by the pages alone. */
class PracticeInABrowserTest {
    private static final int MOST_STEPS = 40;
    private static final Pattern READS = Pattern.compile("reads (-?[0-9.]+)°");
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

    @Test
    void aPracticeByEyeIsPlayedToStop_andDebriefed() {
        try (ServedNight night = new ServedNight(folder, "2026-11-26T10:00:00Z");
                BrowserContext held = browser.device(Device.PHONE)) {
            Page page = held.newPage();
            page.navigate(night.address("/practice"));
            page.locator("form[action='/do/practice-begin'] button").click();
            page.locator("text=What to do now, and log it").waitFor();
            int step = 0;
            while (step < MOST_STEPS && !(advice(night) instanceof Advice.Stop)) {
                follow(page, night);
                step++;
            }
            assertThat(advice(night)).isInstanceOf(Advice.Stop.class);
            page.navigate(night.address("/practice/night/"));
            assertThat(page.locator(".steps .step").first()).containsText("Good enough");
            PracticeState played = game(night);
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

    private static PracticeState game(ServedNight night) {
        return PracticeNight.current(night.desk().workbench()).orElseThrow().state();
    }

    private static Advice advice(ServedNight night) {
        return night.practice().tonight().orElseThrow().state().advice();
    }

    private static void follow(Page page, ServedNight night) {
        long next = night.practice().tonight().orElseThrow().lastSeq() + 1;
        Advice advice = advice(night);
        if (advice instanceof Advice.TakeSighting take) {
            look(page, night, take);
        } else {
            if (advice instanceof Advice.TurnScrews turn) {
                if (turn.loosenFirst()) {
                    does(page, night, "practice-unclamp", "button");
                }
                turn.turns().forEach(each -> turn(page, night, each));
            } else if (advice instanceof Advice.Clamp) {
                does(page, night, "practice-clamp", "button");
            } else if (advice instanceof Advice.MoveByHand move) {
                page.navigate(night.address("/practice"));
                page.locator("input[name=right]")
                        .fill(String.valueOf(move.azimuth().degrees()));
                page.locator("input[name=up]")
                        .fill(String.valueOf(move.altitude().degrees()));
                does(page, night, "practice-move", "button.main");
            }
            page.navigate(night.address("/practice/night/"));
            page.locator(".done button.main").click();
        }
        PersonAtThePage.isLogged(page, next);
    }

    /** Presses a button of the game and waits until it has told. */
    private static void does(Page page, ServedNight night, String form, String button) {
        if (!page.url().endsWith("/practice")) {
            page.navigate(night.address("/practice"));
        }
        int before = game(night).done().size();
        page.waitForResponse(
                response -> response.url().endsWith("/practice") && response.status() == 200,
                () -> page.locator("form[action='/do/" + form + "'] " + button)
                        .first()
                        .click());
        assertThat(game(night).done()).hasSize(before + 1);
        // The page that the answer brings has other keys.
        page.navigate(night.address("/practice"));
    }

    private static void turn(Page page, ServedNight night, ScrewTurn turn) {
        page.navigate(night.address("/practice"));
        page.locator("#practice-screw-screw")
                .selectOption(turn.screw() == ScrewTurn.Which.AZIMUTH ? "azimuth" : "altitude");
        page.locator("#practice-screw-turns").fill(TurnWords.typed(turn));
        does(page, night, "practice-screw", "button.main");
    }

    private static void look(Page page, ServedNight night, Advice.TakeSighting take) {
        switch (take.kind()) {
            case COMPASS -> {
                does(page, night, "practice-compass", "button");
                enter(page, night, "bearing", read(page));
            }
            case LEVEL_AND_SCALE -> {
                does(page, night, "practice-scale", "button");
                enter(page, night, "altitude", read(page));
            }
            case STILL_POINT -> {
                does(page, night, "practice-rocking", "button");
                assertThat(page.locator(".drawing svg")).isVisible();
                // A test has no eye for the picture: it takes the figures that the picture shows.
                Seen.WhileRocking seen =
                        (Seen.WhileRocking) game(night).lastLook().orElseThrow().seen();
                Seen.StarPlace star = seen.star().orElseThrow();
                page.navigate(night.address("/practice/night/"));
                page.locator("a.main").click();
                page.locator("input[name=star]").fill(star.star());
                page.locator("input[name=with]").fill(seen.optic().name());
                page.locator("input[name=distance]").fill(String.valueOf(star.fields()));
                page.locator("input[name=toward]").fill(String.valueOf(star.clock()));
                page.locator(".entry button.main").click();
            }
            case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST -> {
                page.navigate(night.address("/practice"));
                page.locator("#practice-drift-star")
                        .fill(take.star().orElseThrow().name());
                page.locator("#practice-drift-minutes")
                        .fill(String.valueOf(take.watch().toMinutes()));
                does(page, night, "practice-drift", "button.main");
                Seen.Drifted seen =
                        (Seen.Drifted) game(night).lastLook().orElseThrow().seen();
                page.navigate(night.address("/practice/night/"));
                page.locator("a.main").click();
                page.locator("input[name=moved]")
                        .fill(String.valueOf(seen.moved().count()));
                page.locator("input[name=toward]").fill(seen.northward() ? "north" : "south");
                seen.optic().ifPresent(optic -> page.locator("input[name=with]").fill(optic.name()));
                page.locator(".entry button.main").click();
            }
            default -> throw new AssertionError("no look in the game for " + take.kind());
        }
    }

    /** What the game's page says that the instrument reads. */
    private static String read(Page page) {
        Matcher reads = READS.matcher(page.locator("main").textContent());
        assertThat(reads.find()).isTrue();
        return reads.group(1);
    }

    private static void enter(Page page, ServedNight night, String field, String value) {
        page.navigate(night.address("/practice/night/"));
        page.locator("a.main").click();
        page.locator("input[name=" + field + "]").fill(value);
        page.locator(".entry button.main").click();
    }
}
