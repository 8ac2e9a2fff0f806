package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.operations.practice.PracticeNight;
import polewright.report.text.TurnWords;
import polewright.simulation.practice.ObservedReadings;
import polewright.simulation.practice.PracticeState;

/** Someone who plays a practice night: carries out the advice on its page, and enters the readings there. */
final class PracticePlayer {
    private static final Pattern READS = Pattern.compile("reads (-?[0-9.]+)°");

    private final Page page;
    private final ServedNight night;

    PracticePlayer(Page page, ServedNight night) {
        this.page = page;
        this.night = night;
    }

    PracticeState game() {
        return PracticeNight.current(night.session().workbench()).orElseThrow().state();
    }

    Advice advice() {
        return night.practice().tonight().orElseThrow().state().advice();
    }

    void follow() {
        long next = night.practice().tonight().orElseThrow().lastSeq() + 1;
        Advice advice = advice();
        if (advice instanceof Advice.TakeSighting take) {
            look(take);
        } else {
            if (advice instanceof Advice.TurnScrews turn) {
                turnOnly(turn);
            } else if (advice instanceof Advice.Clamp) {
                press("practice-clamp", "button");
            } else if (advice instanceof Advice.MoveByHand move) {
                page.navigate(night.address("/practice"));
                page.locator("input[name=right]")
                        .fill(String.valueOf(move.azimuth().degrees()));
                page.locator("input[name=up]")
                        .fill(String.valueOf(move.altitude().degrees()));
                press("practice-move", "button.main");
            }
            page.navigate(night.address("/practice/night/"));
            page.locator(".done button.main").click();
        }
        PersonAtThePage.assertLogged(page, next);
    }

    /** Presses a button of the practice and waits for its result. */
    private void press(String form, String button) {
        if (!page.url().endsWith("/practice")) {
            page.navigate(night.address("/practice"));
        }
        int before = game().done().size();
        page.waitForResponse(
                response -> response.url().endsWith("/practice") && response.status() == 200,
                () -> page.locator("form[action='/do/" + form + "'] " + button)
                        .first()
                        .click());
        assertThat(game().done()).hasSize(before + 1);
        // The page in the answer has new keys.
        page.navigate(night.address("/practice"));
    }

    /** Turns as advised without logging it. */
    void turnOnly(Advice.TurnScrews turn) {
        if (turn.loosenFirst()) {
            press("practice-unclamp", "button");
        }
        turn.turns().forEach(this::turn);
    }

    /** Whether frames have given the axis and now follow the screws. */
    boolean followsFrames() {
        return night.practice().frames().orElseThrow().status().step().isPresent();
    }

    private void turn(ScrewTurn turn) {
        page.navigate(night.address("/practice"));
        page.locator("#practice-screw-screw")
                .selectOption(turn.screw() == ScrewTurn.Which.AZIMUTH ? "azimuth" : "altitude");
        page.locator("#practice-screw-turns").fill(TurnWords.typed(turn));
        press("practice-screw", "button.main");
    }

    private void look(Advice.TakeSighting take) {
        switch (take.kind()) {
            case COMPASS -> {
                press("practice-compass", "button");
                enter("bearing", read());
            }
            case LEVEL_AND_SCALE -> {
                press("practice-scale", "button");
                enter("altitude", read());
            }
            case STILL_POINT -> {
                press("practice-rocking", "button");
                assertThat(page.locator(".drawing svg")).isVisible();
                // A test cannot look at the picture, so it takes the figures behind it.
                ObservedReadings.WhileRocking seen = (ObservedReadings.WhileRocking)
                        game().lastLook().orElseThrow().seen();
                ObservedReadings.StarPlace star = seen.star().orElseThrow();
                // Not by the link on Now: time has passed, and Now may advise something else.
                page.navigate(night.address("/practice/night/sightings/still"));
                page.locator("input[name=star]").fill(star.star());
                page.locator("select[name=with]").selectOption(seen.optic().name());
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
                press("practice-drift", "button.main");
                ObservedReadings.Drifted seen = (ObservedReadings.Drifted)
                        game().lastLook().orElseThrow().seen();
                page.navigate(night.address("/practice/night/sightings/drift"));
                page.locator("input[name=star]").fill(take.star().orElseThrow().name());
                page.locator("input[name=minutes]")
                        .fill(String.valueOf(take.watch().toMinutes()));
                page.locator("input[name=moved]")
                        .fill(String.valueOf(seen.moved().count()));
                page.locator("input[name=toward]").fill(seen.northward() ? "north" : "south");
                seen.optic()
                        .ifPresent(optic -> page.locator("select[name=with]").selectOption(optic.name()));
                page.locator(".entry button.main").click();
            }
            default -> throw new AssertionError("no look in the game for " + take.kind());
        }
    }

    /** The instrument reading on the practice page. */
    private String read() {
        Matcher reads = READS.matcher(page.locator("main").textContent());
        assertThat(reads.find()).isTrue();
        return reads.group(1);
    }

    private void enter(String field, String value) {
        page.navigate(night.address("/practice/night/"));
        page.locator("a.main").click();
        page.locator("input[name=" + field + "]").fill(value);
        page.locator(".entry button.main").click();
    }
}
