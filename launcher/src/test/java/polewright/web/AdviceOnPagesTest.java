package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Advice that was worded for a terminal, as shown on a page: each sentence stays with its context. */
@Tag("slow")
class AdviceOnPagesTest {
    private static final Pattern STEP = Pattern.compile("<p class=\"step\"><span class=\"tag\">(.*?)</span> (.*?)</p>");
    private static final Pattern CAUTION = Pattern.compile("(?s)<section class=\"caution\".*?</section>");

    @TempDir
    private Path folder;

    private ServedNight night;

    @BeforeEach
    void begin() {
        night = new ServedNight(folder, "2026-11-25T20:00:00Z");
        type("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        type("sight", "scale", "54.6");
    }

    @AfterEach
    void close() {
        night.close();
    }

    private void type(String... words) {
        CommandOutcome result = night.type(words);
        assertThat(result.isGood()).as("%s", result).isTrue();
    }

    private String page(String path) throws IOException, InterruptedException {
        return page(night, path);
    }

    private static String page(ServedNight night, String path) throws IOException, InterruptedException {
        HttpRequest request =
                HttpRequest.newBuilder(URI.create(night.address(path))).build();
        return HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
    }

    private static List<String> steps(String page) {
        List<String> steps = new ArrayList<>();
        Matcher step = STEP.matcher(page);
        while (step.find()) {
            steps.add(step.group(1) + ": " + step.group(2));
        }
        return steps;
    }

    @Test
    void handMove_isAStep_notPartOfTheCaution() throws Exception {
        type("sight", "compass", "30");
        String page = page("/");
        assertThat(steps(page)).anySatisfy(step -> assertThat(step).startsWith("Swing: About "));
        Matcher caution = CAUTION.matcher(page);
        assertThat(caution.find()).isTrue();
        assertThat(caution.group())
                .contains("two people", "Clamp the tube first", "keep the tripod from tipping.")
                .doesNotContain("facing the pole");
    }

    @Test
    void viewingDirection_isGivenForEachScrew_andTheAssumptionOnce() throws Exception {
        type("sight", "compass", "0");
        type("sight", "still", "polaris", "--distance", "0.1", "--toward", "2", "--with", "finder", "--sigma", "0.02");
        List<String> steps = steps(page("/"));
        List<String> turns =
                steps.stream().filter(step -> step.startsWith("Turn: ")).toList();
        assertThat(turns)
                .isNotEmpty()
                .allSatisfy(turn -> assertThat(turn).contains("clockwise, looking at its head ("));
        assertThat(steps.stream().filter(step -> step.startsWith("Sky: ")))
                .isNotEmpty()
                .allSatisfy(sky -> assertThat(sky).doesNotContain("head"));
        assertThat(steps.stream().filter(step -> step.contains("screw directions are not yet known")))
                .hasSize(1);
    }

    @Test
    void tonight_cautionsAboutSunriseOnce() throws Exception {
        night.wait(Duration.ofMinutes(11 * 60 + 20));
        String page = page("/tonight").replaceAll("\\s+", " ");
        assertThat(page)
                .contains("Stars to align on")
                .containsOnlyOnce("The Sun rises at ")
                .containsOnlyOnce("cap tube and finder before then.");
        assertThat(page.indexOf("The Sun rises at ")).isLessThan(page.indexOf("Stars to align on"));
    }

    @Test
    void tonight_keepsTheDaytimeCautionOfTheStars() throws Exception {
        night.wait(Duration.ofHours(15));
        assertThat(page("/tonight").replaceAll("\\s+", " ")).contains("stay at least 30° from the Sun.");
    }

    @Test
    void beforeANight_pagesThatNeedOne_linkToBegin(@TempDir Path empty) throws Exception {
        try (ServedNight none = new ServedNight(empty, "2026-11-25T20:00:00Z")) {
            for (String path :
                    List.of("/", "/ground", "/work", "/sightings", "/fix", "/tonight", "/pointing", "/rig")) {
                assertThat(page(none, path)).as(path).contains("href=\"/begin\"");
            }
        }
    }
}
