package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.fix.Mistake;
import polewright.alignment.fix.Step;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.Misreading;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.ScrewSense;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;
import polewright.web.form.MistakeCorrection;
import polewright.web.form.SetupForms;
import polewright.web.view.FieldView;

/** Correcting rig, site and sightings on the pages. */
@Tag("slow")
class CorrectedOnPagesTest {
    private static final Pattern CORRECT = Pattern.compile("class=\"correct\" href=\"([^\"]+)\"");

    @TempDir
    private Path folder;

    private ServedNight night;
    private PageReader reader;
    private int sent;

    @BeforeEach
    void beginNight() {
        night = new ServedNight(folder, "2026-11-25T20:00:00Z");
        reader = new PageReader(night);
        assertThat(night.type("begin", "--site", "54.60,-2.90,240").isGood()).isTrue();
    }

    @AfterEach
    void close() {
        night.close();
    }

    private HttpResponse<String> post(String form, Map<String, String> fields) throws Exception {
        Map<String, String> all = new HashMap<>(fields);
        all.put("key", "sent-by-the-test-" + sent++);
        return reader.post("/do/" + form, all);
    }

    private String page(String path) throws Exception {
        return reader.page(path);
    }

    private NightEvent.Begun begun() {
        return night.session().tonight().orElseThrow().state().begun();
    }

    private NightEvent last() {
        List<LoggedEvent> all = night.session().tonight().orElseThrow().events();
        return all.get(all.size() - 1).event();
    }

    @Test
    void checkbox_reversesTheScrew_andThePageShowsIt() throws Exception {
        assertThat(page("/rig"))
                .contains("Azimuth screw works the opposite way", "clockwise moves the axis right")
                .doesNotContain("If this is another of your rigs");
        assertThat(post("correct-rig", Map.of("azimuth-reversed", "yes", "altitude-gain", "0.75"))
                        .statusCode())
                .isEqualTo(303);
        assertThat(last()).isInstanceOf(Correction.RigCorrected.class);
        assertThat(begun().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(page("/rig")).contains("clockwise moves the axis left", "arm 240 mm");

        assertThat(post("undo", Map.of("seq", "2")).statusCode()).isEqualTo(303);
        assertThat(begun().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.RIGHT);
    }

    /** What a browser sends of an untouched form, with one box ticked. */
    @Test
    void rigForm_asABrowserSendsIt_correctsOnlyWhatWasTicked() throws Exception {
        Map<String, String> sent = new HashMap<>();
        for (Argument<?> argument : SetupForms.RIG.fields()) {
            FieldView field = new FieldView(SetupForms.RIG.id(), argument, "");
            if (!field.isTick()) {
                sent.put(
                        field.name(),
                        field.options().stream()
                                .findFirst()
                                .map(ArgumentType.Option::value)
                                .orElse(""));
            }
        }
        sent.put("altitude-reversed", "yes");
        assertThat(post("correct-rig", sent).statusCode()).isEqualTo(303);
        assertThat(begun().rig().altitudeScrew().clockwise()).isEqualTo(ScrewSense.LOWERS);
        assertThat(begun().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.RIGHT);
    }

    /** Last night's skyline is used again, and the page says so. */
    @Test
    void nextNight_saysWhatWasCarriedOver() throws Exception {
        assertThat(night.type("horizon", "0,8", "90,20", "180,4").isGood()).isTrue();
        HttpResponse<String> begun = post("begin", Map.of("again", "yes"));
        assertThat(begun.statusCode()).isEqualTo(303);
        assertThat(page(begun.headers().firstValue("Location").orElseThrow()))
                .contains("Same skyline as last time, with 3 corners.");
    }

    @Test
    void formWithoutChanges_isReported_inPageLanguage() throws Exception {
        HttpResponse<String> answer = post("correct-rig", Map.of());
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("role=\"alert\"", "No figure of the rig is corrected");
        HttpResponse<String> site = post("correct-site", Map.of());
        assertThat(site.statusCode()).isEqualTo(422);
        assertThat(site.body()).contains("role=\"alert\"").doesNotContain("add --site");
    }

    @Test
    void knownRig_isChosenWithOnePress() throws Exception {
        Path file = folder.resolve("rig.json");
        Files.writeString(file, night.type("rig").out().replace("\"fork\"", "\"old fork\""));
        assertThat(night.type("begin", "--again", "--rig", file.toString()).isGood())
                .isTrue();
        assertThat(page("/rig")).contains("If this is another of your rigs", "It is fork");
        assertThat(post("known-rig", Map.of("known", "fork")).statusCode()).isEqualTo(303);
        assertThat(begun().rig().name()).isEqualTo("fork");
    }

    @Test
    void site_isCorrectedByItsSigns() throws Exception {
        assertThat(page("/rig")).contains("The longitude has the wrong sign");
        assertThat(post("correct-site", Map.of("other-longitude", "yes")).statusCode())
                .isEqualTo(303);
        assertThat(begun().site().longitude().degrees()).isEqualTo(2.9);
        assertThat(post("correct-site", Map.of("site", "54.60,-2.90,240")).statusCode())
                .isEqualTo(303);
        assertThat(begun().site().longitude().degrees()).isEqualTo(-2.9);
    }

    @Test
    void sighting_hasAPrefilledForm_thatReplacesIt() throws Exception {
        assertThat(night.type("sight", "compass", "4").isGood()).isTrue();
        assertThat(night.type(
                                "sight",
                                "drift",
                                "alp Lyr",
                                "--minutes",
                                "5",
                                "--moved",
                                "2.5",
                                "--toward",
                                "s",
                                "--with",
                                "reticle")
                        .isGood())
                .isTrue();
        Matcher links = CORRECT.matcher(page("/nights"));
        assertThat(links.find()).isTrue();
        String form = page(links.group(1).replace("&amp;", "&"));
        assertThat(form)
                .contains(
                        "name=\"instead-of\" value=\"3\"",
                        "name=\"minutes\" value=\"5\"",
                        "name=\"moved\" value=\"2.5\"",
                        "name=\"toward\" value=\"south\"",
                        "name=\"per\" value=\"15\"");
        Matcher star = Pattern.compile("name=\"star\" value=\"([^\"]*)\"").matcher(form);
        assertThat(star.find()).isTrue();

        assertThat(post(
                                "drift",
                                Map.of(
                                        "instead-of", "3",
                                        "star", star.group(1),
                                        "minutes", "5",
                                        "moved", "2.5",
                                        "per", "15",
                                        "toward", "north"))
                        .statusCode())
                .isEqualTo(303);
        assertThat(last()).isInstanceOf(Correction.MeasurementCorrected.class);
        assertThat(night.session().tonight().orElseThrow().state().standing()).hasSize(3);
        assertThat(page("/nights")).contains("(replaced by #4)", "in place of #3: drift: ");
    }

    private NightEvent pressed(Mistake mistake) throws Exception {
        MistakeCorrection correction = MistakeCorrection.of(
                        mistake, night.session().tonight().orElseThrow().state())
                .orElseThrow();
        assertThat(post(correction.form().id(), correction.values()).statusCode())
                .as(correction.words())
                .isEqualTo(303);
        return last();
    }

    /** Every mistake that a fix can name is corrected by the form that its button sends. */
    @Test
    void mistakeNamedByTheFix_isCorrectedWithOnePress() throws Exception {
        assertThat(night.type("sight", "compass", "4", "--declination", "2").isGood())
                .isTrue();
        assertThat(night.type("turn", "--azimuth", "2 ccw then 1/2 cw", "--altitude", "1")
                        .isGood())
                .isTrue();
        assertThat(pressed(new Mistake.TurnMistaken(
                        3,
                        new Step.Turned(3, new HandTurns(1.5, -0.5), HandTurns.straight(1)),
                        "it went the other way")))
                .isEqualTo(new Correction.TurnCorrected(
                        3, new NightEvent.ScrewsTurned(new HandTurns(1.5, -0.5), HandTurns.straight(1))));
        assertThat(pressed(new Mistake.TurnMistaken(3, new Step.Turned(3, 0, 0), "nothing had moved")))
                .isEqualTo(new NightEvent.Withdrawn(3));
        CompassBearing result = (CompassBearing) ((NightEvent.SightingTaken)
                        night.session().tonight().orElseThrow().events().get(1).event())
                .sighting();
        Misreading misreading = result.misreadings().get(0);
        NightEvent corrected = pressed(new Mistake.SightingMisread(2, misreading.meant(), misreading.cause()));
        assertThat(corrected).isInstanceOf(Correction.MeasurementCorrected.class);
        assertThat(((CompassBearing) ((NightEvent.SightingTaken) ((Correction.MeasurementCorrected) corrected).meant())
                                .sighting())
                        .declination()
                        .degrees())
                .isEqualTo(-2);
        assertThat(pressed(new Mistake.SiteWrong(Site.ofDegrees(-54.6, -2.9, 240), "the site were in the south")))
                .isEqualTo(new Correction.SiteCorrected(Site.ofDegrees(-54.6, -2.9, 240)));
        assertThat(pressed(new Mistake.ClockWrong(Duration.ofHours(-2), "the clock was 2 hours fast")))
                .isInstanceOf(Correction.ClockCorrected.class);
    }
}
