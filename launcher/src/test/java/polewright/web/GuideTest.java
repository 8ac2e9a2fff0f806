package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.advice.Advice;
import polewright.mount.AxisOffset;
import polewright.sky.place.Site;
import polewright.web.Browser.Device;

/**
 * Plays the first night of docs/guide.md step by step on the pages. Saves its pictures in target/guide;
 * docs/guide/make copies them. Text set in bold in the guide must appear on a page pictured in the same section.
 */
@Tag("slow")
class GuideTest {
    private static final Path PICTURES = Path.of("target", "guide");
    private static final Path GUIDE = Path.of("..", "docs", "guide.md");
    private static final long LARGEST_PICTURE_BYTES = 320_000;
    private static final int MOST_STEPS = 40;
    private static final Pattern PICTURE = Pattern.compile("!\\[[^\\]]+\\]\\(guide/([a-z-]+\\.png)\\)");
    private static final Pattern BOLD = Pattern.compile("\\*\\*([^*]+)\\*\\*");

    @TempDir
    private Path folder;

    /** The text of each page when its picture was taken. */
    private final Map<String, String> pictured = new LinkedHashMap<>();

    @Test
    void guide_matchesThePages() throws IOException {
        Files.createDirectories(PICTURES);
        try (ServedNight night = ServedNight.byEye(folder, "2026-11-25T20:00:00Z");
                Browser browser = new Browser();
                BrowserContext phone = browser.device(Device.PHONE);
                BrowserContext laptop = browser.device(Device.LAPTOP)) {
            Page page = phone.newPage();
            begin(page, night);
            page.navigate(night.address("/ground"));
            take(page, "ground.png");
            page.navigate(night.address("/work"));
            take(page, "work.png");
            adjust(page, night);
            page.navigate(night.address("/nights"));
            take(page, "nights.png");
            Page table = laptop.newPage();
            table.navigate(night.address("/tonight"));
            table.locator("button[name=palette]").click();
            table.locator("html.day").waitFor();
            take(table, "tonight.png");
            table.navigate(night.address("/fix"));
            take(table, "fix.png");
        }
        assertGuideMatchesPages(Files.readString(GUIDE, StandardCharsets.UTF_8));
    }

    private void begin(Page page, ServedNight night) throws IOException {
        page.navigate(night.address("/"));
        take(page, "first.png");
        page.locator("a.main").click();
        page.locator("#begin-site").fill("54.60,-2.90,240");
        page.locator("#begin-name").fill("Larkfell");
        page.locator("#begin-for").selectOption("a casual look");
        take(page, "begin.png");
        page.locator(".entry button.main").click();
        PersonAtThePage.assertLogged(page, 1);
    }

    private void adjust(Page page, ServedNight night) throws IOException {
        PersonAtThePage person =
                new PersonAtThePage(night, Site.ofDegrees(54.60, -2.90, 240), AxisOffset.ofArcminutes(70, -50), 11);
        page.navigate(night.address("/"));
        take(page, "now.png");
        page.locator("a.main").click();
        take(page, "sighting.png");
        page.navigate(night.address("/"));
        for (int step = 0; step < MOST_STEPS && !(person.advice() instanceof Advice.Stop); step++) {
            if (person.advice() instanceof Advice.TurnScrews && !pictured.containsKey("turn.png")) {
                take(page, "turn.png");
            }
            if (person.advice() instanceof Advice.Clamp && !pictured.containsKey("clamp.png")) {
                take(page, "clamp.png");
            }
            person.follow(page);
        }
        assertThat(person.advice()).isInstanceOf(Advice.Stop.class);
        take(page, "stop.png");
    }

    private void take(Page page, String name) throws IOException {
        page.locator("main h1").waitFor();
        // Leave out the focus ring and the blinking cursor.
        page.evaluate("document.activeElement?.blur()");
        Path picture = PICTURES.resolve(name);
        page.screenshot(new Page.ScreenshotOptions().setPath(picture));
        assertThat(Files.size(picture)).as(name).isLessThan(LARGEST_PICTURE_BYTES);
        pictured.put(name, plain(String.valueOf(page.evaluate("document.body.textContent"))));
    }

    private void assertGuideMatchesPages(String guide) {
        List<String> shown = new ArrayList<>();
        for (String section : guide.split("(?m)^## ", -1)) {
            List<String> names = found(PICTURE, section);
            assertThat(pictured.keySet()).as("pictures that this test makes").containsAll(names);
            names.forEach(name ->
                    assertThat(GUIDE.resolveSibling("guide").resolve(name)).isRegularFile());
            shown.addAll(names);
            for (String bold : found(BOLD, section)) {
                assertThat(names.stream().map(pictured::get))
                        .as(
                                "a page with '%s', in the section '%s'",
                                bold, section.lines().findFirst().orElse(""))
                        .anySatisfy(text -> assertThat(text).contains(plain(bold)));
            }
        }
        assertThat(shown).as("every picture is in the guide").containsAll(pictured.keySet());
    }

    private static List<String> found(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map((MatchResult result) -> result.group(1))
                .toList();
    }

    private static String plain(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }
}
