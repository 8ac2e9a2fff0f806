package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;

/** A sighting that is impossible is skipped with one press on Now, and another is advised. */
class SkippedOnPagesTest {
    private static final Pattern PRESS =
            Pattern.compile("(?s)<form method=\"post\" action=\"(/do/skip)\".*?>(.*?)<button>(.*?)</button>");
    private static final Pattern HIDDEN = Pattern.compile("name=\"([^\"]+)\" value=\"([^\"]*)\"");

    @TempDir
    private Path folder;

    private final HttpClient client = HttpClient.newHttpClient();
    private ServedNight night;

    /** A button and the fields that it sends. */
    private record Press(String label, Map<String, String> fields) {}

    @BeforeEach
    void beginNight() {
        night = ServedNight.byEye(folder, "2026-11-25T20:00:00Z");
        type("begin", "--site", "54.60,-2.90,240");
    }

    @AfterEach
    void close() {
        night.close();
    }

    private void type(String... words) {
        assertThat(night.type(words).isGood()).isTrue();
    }

    private String now() throws Exception {
        return page("/");
    }

    private String page(String path) throws Exception {
        return client.send(
                        HttpRequest.newBuilder(URI.create(night.address(path))).build(),
                        HttpResponse.BodyHandlers.ofString())
                .body();
    }

    private List<Press> presses() throws Exception {
        List<Press> presses = new ArrayList<>();
        Matcher found = PRESS.matcher(now());
        while (found.find()) {
            Map<String, String> fields = new LinkedHashMap<>();
            HIDDEN.matcher(found.group(2)).results().forEach(field -> fields.put(field.group(1), field.group(2)));
            presses.add(new Press(found.group(3), fields));
        }
        return presses;
    }

    private Press labelled(String label) throws Exception {
        return presses().stream()
                .filter(press -> press.label().equals(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no press '" + label + "'"));
    }

    /** Submits the press; returns the address that the answer leads to. */
    private String send(Press press) throws Exception {
        String body = press.fields().entrySet().stream()
                .map(field -> field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        HttpResponse<String> answer = client.send(
                HttpRequest.newBuilder(URI.create(night.address("/do/skip")))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .header("Origin", night.address(""))
                        .POST(HttpRequest.BodyPublishers.ofString(body))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).isEqualTo(303);
        return answer.headers().firstValue("Location").orElseThrow();
    }

    private List<Skip> skips() {
        return night.session().tonight().orElseThrow().events().stream()
                .map(logged -> logged.event())
                .filter(NightEvent.SightingSkipped.class::isInstance)
                .map(event -> ((NightEvent.SightingSkipped) event).skip())
                .toList();
    }

    private Advice advice() {
        return night.session().tonight().orElseThrow().state().advice();
    }

    @Test
    void onlySensibleReasons_areOffered() throws Exception {
        assertThat(presses()).extracting(Press::label).containsExactly("No scale here");
        type("sight", "scale", "54.2");
        assertThat(presses()).extracting(Press::label).containsExactly("No compass here");
        type("sight", "compass", "2");
        String star =
                ((Advice.TakeSighting) advice()).star().map(AdvisedStar::name).orElseThrow();
        assertThat(presses())
                .extracting(Press::label)
                .containsExactly(
                        "I cannot find " + star, "Something blocks " + star, "Cloud over it", "No reticle here");
        assertThat(now()).doesNotContain("polewright skip");
    }

    @Test
    void onePress_logsOneEvent_andAnotherStarIsAdvised() throws Exception {
        type("sight", "scale", "54.2");
        type("sight", "compass", "2");
        Advice before = advice();
        String star = ((Advice.TakeSighting) before).star().orElseThrow().name();
        Press cloud = labelled("Cloud over it");
        assertThat(page(send(cloud))).contains("No sightings within 30° of " + star + " for an hour.");
        // Sent again by a phone that received no answer, it is the same press.
        send(cloud);
        assertThat(skips()).singleElement().satisfies(skip -> {
            assertThat(skip.because()).isEqualTo(Skip.Reason.CLOUD);
            assertThat(skip.star().orElseThrow().label()).isEqualTo(star);
        });
        assertThat(advice()).isNotEqualTo(before);
    }

    /** Another device was quicker: the press refers to what its own page showed. */
    @Test
    void pressOnAnOlderPage_refersToWhatThatPageShowed() throws Exception {
        type("sight", "scale", "54.2");
        type("sight", "compass", "2");
        String star = ((Advice.TakeSighting) advice()).star().orElseThrow().name();
        Press older = labelled("I cannot find " + star);
        send(labelled("Cloud over it"));
        send(older);
        assertThat(skips())
                .extracting(skip -> skip.star().orElseThrow().label())
                .containsOnly(star);
    }

    @Test
    void missingReticle_isOmittedFromTheForm() throws Exception {
        type("sight", "scale", "54.2");
        type("sight", "compass", "2");
        send(labelled("No reticle here"));
        assertThat(skips()).extracting(Skip::optic).containsExactly(Optional.of("reticle"));
        String form = page("/sightings/drift");
        assertThat(form)
                .contains(
                        "<option value=\"eyepiece\" selected>",
                        "<option value=\"radii\" selected>",
                        "0.2 of the radius")
                .doesNotContain("<option value=\"reticle\"", "divisions of the reticle");
    }
}
