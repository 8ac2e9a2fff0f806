package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.operations.CommandRun.Outcome;

/** Imaging as tonight's work: cameras, exposures, trailing and the resulting zone. */
@Tag("slow")
class AllowShotTest extends TypedAllowances {
    @ParameterizedTest
    @ValueSource(strings = {LARKFELL, TUSSOCK_FLAT})
    void bestAimForImaging_isAboveThePole_inBothHemispheres(String site) {
        person.good("begin", "--again", "--site", site);
        good("allow --for short subs" + CAMERA);
        JsonNode zone = good("allow --json").json();
        assertThat(zone.get("shape").textValue()).isEqualTo("zone");
        assertThat(zone.get("strictest").textValue()).isEqualTo("short subs");
        assertThat(zone.get("best_aim").get("up_arcmin").doubleValue()).isBetween(0.2, 4.0);
        assertThat(zone.get("best_aim").get("east_arcmin").doubleValue()).isCloseTo(0, within(0.3));
        assertThat(zone.get("depth_arcmin").doubleValue()).isBetween(5.0, 60.0);
        assertThat(zone.get("east_to_arcmin").doubleValue()).isPositive();
        assertThat(zone.get("up_from_arcmin").doubleValue()).isNegative();
        assertThat(zone.get("edges").size()).isGreaterThan(8);
        assertThat(zone.get("edges").get(0).fieldNames())
                .toIterable()
                .containsExactly("east_arcmin", "up_arcmin", "item", "cause");
        JsonNode item = zone.get("work").get(0);
        assertThat(item.get("kind").textValue()).isEqualTo("shot");
        assertThat(item.get("sub_exposure_s").doubleValue()).isEqualTo(30);
        assertThat(item.get("alone").get("depth_arcmin").doubleValue())
                .isEqualTo(zone.get("depth_arcmin").doubleValue());
    }

    /**
     * Vega on 2026-11-25: at right ascension 18h38m it sets in the west. The track lasts as long as the imaging run.
     */
    @Test
    void target_isFollowedFromItsPositionAtTheGivenTime() {
        JsonNode where = good("where vega --at 2026-11-25T21:00Z --json").json();
        good("allow shot vega --exposure 20 --total 60 --target vega --at 2026-11-25T21:00Z" + CAMERA);
        JsonNode region = good("allow --json").json().get("work").get(0).get("region");
        assertThat(region.get("label").textValue()).isEqualTo("Vega");
        assertThat(region.get("hour_angle_from_deg").doubleValue())
                .isCloseTo(where.get("hour_angle_deg").doubleValue(), within(1e-6));
        assertThat(region.get("hour_angle_to_deg").doubleValue()
                        - region.get("hour_angle_from_deg").doubleValue())
                .isCloseTo(15.041067, within(1e-5));
        assertThat(region.get("dec_of_date_deg").doubleValue()).isBetween(38.7, 38.9);
    }

    @Test
    void missingOrUnattainableRigValues_areNoted() throws IOException {
        String notCounted = "NOTE The rig gives no periodic error, so it is not counted";
        String clamping = "NOTE Tightening the clamps may move the axis by 2.0′, more than the radius of the zone";
        assertThat(flat(good("allow --for short subs" + CAMERA)))
                .contains(notCounted)
                .doesNotContain("Tightening the clamps");
        assertThat(flat(good("allow"))).contains(notCounted);
        assertThat(flat(good("allow --for long guided subs" + CAMERA))).doesNotContain(notCounted);
        // The longest exposure that is possible at all leaves almost no margin.
        String minutes = type("allow shot deep --exposure 900 --focal-length 2800 --pixel 3.76")
                .complaint()
                .replaceAll(".* could is ([\\d.]+) minutes.*", "$1");
        assertThat(flat(good("allow shot deep --focal-length 2800 --pixel 3.76 --exposure "
                        + Math.round(60 * Double.parseDouble(minutes)))))
                .contains(clamping);
        Path rig = person.file("rig.json");
        Files.writeString(
                rig, good("rig").out().replace("\"periodic_error_arcsec\" : 0", "\"periodic_error_arcsec\" : 1"));
        good("begin --again --rig " + rig);
        assertThat(flat(good("allow --for short subs" + CAMERA))).doesNotContain(notCounted);
    }

    @Test
    void binningAndTrailsInPixels_areConverted() {
        good("allow shot m31 --exposure 30 --binning 2 --tolerance 2px --guided" + CAMERA);
        JsonNode shot = good("allow --json").json().get("work").get(0);
        assertThat(shot.get("scale_arcsec_px").doubleValue()).isCloseTo(206264.8 * 7.52e-3 / 1200, within(1e-3));
        assertThat(shot.get("tolerance_arcsec").doubleValue()).isCloseTo(2 * 1.2926, within(1e-3));
        assertThat(shot.get("guide_star_arcmin").doubleValue()).isCloseTo(30, within(1e-9));
    }

    @Test
    void impossibleExposure_isRefusedWithTheLongestPossible_andNotLogged() {
        Outcome refused = type("allow shot deep --exposure 900 --focal-length 2800 --pixel 3.76");
        assertThat(refused.status()).isEqualTo(2);
        assertThat(refused.complaint())
                .matches("polewright allow shot: 'deep' is not possible: even with a perfect axis stars trail; the"
                        + " longest that could is \\d+(\\.5)? minutes. Shorten --exposure, allow a longer"
                        + " --tolerance, stay"
                        + " higher, or guide\\.");
        assertThat(person.events()).isEqualTo(1);
        // The exposure reported as possible is indeed accepted.
        String minutes = refused.complaint().replaceAll(".* could is ([\\d.]+) minutes.*", "$1");
        good("allow shot deep --focal-length 2800 --pixel 3.76 --exposure "
                + Math.round(60 * Double.parseDouble(minutes)));
    }

    @Test
    void camera_mustBeNamedOnlyIfTheRigHasSeveral() throws IOException {
        Path rig = person.file("rig.json");
        String cameras =
                "\"cameras\" : [ {\"name\":\"guide\",\"focal_length_mm\":240,\"pixel_um\":3.75,\"width_px\":1280,"
                        + "\"height_px\":960}MORE ]";
        String text = good("rig").out();
        Files.writeString(rig, text.replace("\"cameras\" : [ ]", cameras.replace("MORE", "")));
        good("begin --again --rig " + rig);
        assertThat(flat(good("allow shot wide --exposure 60")))
                .contains("with guide (240 mm, 1280×960 pixels of 3.2″)");
        Files.writeString(
                rig,
                text.replace(
                        "\"cameras\" : [ ]",
                        cameras.replace(
                                "MORE",
                                ", {\"name\":\"main\",\"focal_length_mm\":1200,\"pixel_um\":3.76,\"width_px\":4144,"
                                        + "\"height_px\":2822}")));
        good("begin --again --rig " + rig);
        assertThat(type("allow shot wide --exposure 60").complaint())
                .isEqualTo("polewright allow shot: the rig has several cameras. Give --camera as one of guide, main.");
        assertThat(flat(good("allow shot wide --exposure 60 --camera MAIN"))).contains("with main (1200 mm,");
        assertThat(flat(good("allow --for short subs"))).contains("with main (1200 mm,");
    }

    @Test
    void enteredCamera_isRememberedWithTheWork() {
        good("allow --for short subs" + CAMERA);
        assertThat(flat(good("allow --also long guided subs")))
                .contains("with the camera (1200 mm, 4144×2822 pixels of 0.65″)");
        assertThat(flat(good("allow shot ring --exposure 60")))
                .contains("ring: exposures of 60 s, 60 minutes in all, with the camera (1200 mm, 4144×2822 pixels");
        assertThat(type("allow shot ring --exposure 60 --binning 2").complaint())
                .isEqualTo("polewright allow shot: the rig has no camera. Give --focal-length and --pixel, or add the"
                        + " camera to the rig file.");
        person.waitMinutes(1440);
        assertThat(flat(good("begin --for short subs"))).contains(" for short subs. ");
    }

    @Test
    void begin_withoutACamera_saysWhatToDoNext() {
        assertThat(type("begin --again --for short subs").complaint())
                .isEqualTo("polewright begin: short subs need a camera, and the rig has none. Give --focal-length and"
                        + " --pixel, or add the camera to the rig file.");
        assertThat(type("begin --again --focal-length 500 --pixel 3.76").complaint())
                .isEqualTo(
                        "polewright begin: a camera is given, but not the work. Give --for short subs or --for long guided subs too.");
    }

    /** A first night with a camera needs no rig file. */
    @Test
    void begin_withACamera_isForItsWork() {
        assertThat(flat(good("begin --again --for long guided subs --focal-length 500 --pixel 3.76")))
                .contains(" for long guided subs. ");
        assertThat(flat(good("allow"))).contains("with the camera (500 mm, ");
    }
}
