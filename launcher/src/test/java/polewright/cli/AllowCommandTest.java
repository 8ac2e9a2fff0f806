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
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun.Outcome;

/** The {@code allow} command, for nights at Larkfell and at Tussock Flat. */
@Tag("slow")
class AllowCommandTest extends TypedAllowances {
    @Test
    void withoutWork_showsPlainLimitAndSuggestions() {
        assertThat(good("allow").lines())
                .containsExactly(
                        "ZONE  The axis must be within 5′ of the pole.",
                        "      Set what tonight is for, and the tolerance follows from it.",
                        "      polewright allow --for a casual look",
                        "      polewright allow --for a look by hand",
                        "      polewright allow --for planets at high power",
                        "      polewright allow --for short subs",
                        "      polewright allow --for long guided subs");
        assertThat(person.events()).isEqualTo(1);
    }

    @Test
    void suggestedCommands_runAsPrinted() {
        good("allow").lines().stream()
                .filter(line -> line.contains("polewright allow"))
                .map(line -> line.strip().replace("polewright ", ""))
                .forEach(line -> good(line.contains("subs") ? line + CAMERA : line));
        assertThat(items()).containsExactly("long guided subs");
    }

    @Test
    void work_isShownWithZoneStrictestItemAndAim() {
        good("allow --for short subs" + CAMERA);
        good("allow --also planets");
        String shown = flat(good("allow"));
        assertThat(shown)
                .startsWith("WORK Tonight is for 1. short subs: exposures of 30 s, 60 minutes in all, with the camera"
                        + " (1200 mm, 4144×2822 pixels of 0.65″), not guided, trails up to 3.0″; anywhere"
                        + " above 30°, except within 10° of the pole. On its own: within ")
                .contains(" 2. planets at high power: a field of 24′, 10 minutes without touching the controls, go-to"
                        + " within 24′; anywhere above"
                        + " 20°, except within 10° of the pole. On its own: within 24′ of its best aim;"
                        + " farther out, go-tos miss the field. ZONE Good enough: within ")
                .contains("WHY The limit is set by short subs: beyond it, stars trail.")
                .containsPattern(
                        "AIM Best is \\d\\.\\d′ above the true pole, the point farthest from every edge of the zone\\.");
    }

    @Test
    void newWork_isShownImmediately() {
        Outcome result = good("allow --for planets");
        assertThat(result.lines())
                .startsWith(
                        "WORK  planets at high power: a field of 24′, 10 minutes without touching the",
                        "      controls, go-to within 24′; anywhere above 20°, except within 10° of the",
                        "      pole.",
                        "ZONE  Good enough: within 24′ of the best aim, in any direction.",
                        "WHY   The limit is set by planets at high power: beyond it, go-tos miss the",
                        "      field.",
                        "AIM   The true pole is the best aim.",
                        "Logged #2: work set.");
        JsonNode json = good("allow --for casual --json").json();
        assertThat(json.get("found").get("strictest").textValue()).isEqualTo("a casual look");
        assertThat(json.get("allowance").get("shape").textValue()).isEqualTo("zone");
        assertThat(json.get("advice").has("do")).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "--for a casual look, a casual look",
        "--for casual-look, a casual look",
        "--for Casual, a casual look",
        "--for planets, planets at high power",
        "--for planets at|high power, planets at high power",
    })
    void shortItems_areAccepted(String typed, String item) {
        good("allow " + typed);
        assertThat(items()).containsExactly(item);
    }

    @Test
    void itemOfTheSameName_replacesTheOther_andCanBeDropped() {
        good("allow look moon --field 0.5");
        good("allow look saturn --eyepiece reticle --stay 20 --go-to 15");
        assertThat(flat(good("allow look Moon --field 0.7 --stay 30")))
                .contains(
                        "Moon: a field of 42′, 30 minutes without touching the controls; anywhere above 30°, except within"
                                + " 10° of the pole. In place of 'moon'. ZONE");
        assertThat(items()).containsExactly("Moon", "saturn");
        assertThat(flat(good("allow drop moon"))).contains("NOTE Tonight is no longer for Moon.");
        assertThat(items()).containsExactly("saturn");
    }

    @Test
    void plainLimit_replacesWork() {
        good("allow --for planets");
        assertThat(good("allow 3").out())
                .startsWith("Logged #3: allowance set.\nNOTE  No longer used: planets at high power.\n");
        assertThat(good("allow --json").json().get("depth_arcmin").doubleValue())
                .isCloseTo(3, within(1e-9));
        good("undo");
        assertThat(items()).containsExactly("planets at high power");
    }

    /**
     * 2026-11-25 at Larkfell: Venus is some 30° west of the Sun and the Moon is nearly full; 12:00 UTC is in daylight.
     */
    @Test
    void daytimeTarget_isNoted_andTargetNearTheSunBringsACaution() {
        String near = flat(good("allow look mercury --field 0.5 --target mercury --at 2026-11-25T12:00Z"));
        assertThat(near)
                .contains("CARE Only ")
                .contains("° from the Sun, which is up. Do not point there without a proper solar filter.")
                .contains(
                        "NOTE It is daylight at 2026-11-25T12:00:00Z, when this begins. Give a later time if you start after dark.");
        JsonNode json = good("allow look jupiter --field 0.5 --target jupiter --at 2026-11-25T09:00Z --json")
                .json();
        assertThat(json.get("notes")).hasSize(1);
        assertThat(json.get("notes").get(0).textValue()).startsWith("NOTE  It is daylight at 2026-11-25T09:00:00Z");
        assertThat(good("allow look vega --field 0.5 --target vega").out()).doesNotContain("NOTE", "CARE");
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            quoteCharacter = '`',
            value = {
                "allow lok => allow ARCMIN: 'lok' is not a limit or a kind of work. Write arcminutes, such as 5, or"
                        + " look, shot or drop, or --for with one of \"a casual look\", \"a look by hand\","
                        + " \"planets at high power\", \"short subs\", \"long guided subs\".",
                "allow 0 => allow: an allowance of 0 arcminutes is outside 0.05 to 600. Give how far the axis may be"
                        + " off the pole, in arcminutes; 5 suits visual observing.",
                "allow --for galaxies => allow --for: 'galaxies' is not a kind of work. Write one of \"a casual look\","
                        + " \"a look by hand\", \"planets at high power\", \"short subs\", \"long guided subs\", or"
                        + " add a look or a shot of your own.",
                "allow --for => allow: --for needs a value. Add one of \"a casual look\", \"a look by"
                        + " hand\", \"planets at high power\", \"short subs\", \"long guided subs\".",
                "allow --for planets look => allow --for: 'planets look' is not a kind of work. Write one of \"a casual"
                        + " look\", \"a look by hand\", \"planets at high power\", \"short subs\", \"long guided"
                        + " subs\", or add a look or a shot of your own.",
                "allow --for short subs => allow: short subs need a camera, and the rig has none. Give"
                        + " --focal-length and --pixel, or add the camera to the rig file.",
                "allow --for planets --focal-length 1200 --pixel 3.76 => allow: no camera is used for planets at"
                        + " high power. Leave out the camera options.",
                "allow --focal-length 1200 --pixel 3.76 => allow: a camera is given, but not the work. Give --for short subs or"
                        + " --for long guided subs too.",
                "allow 3 --for planets => allow: a plain limit does not depend on the work. Give the arcminutes"
                        + " alone, or leave them out.",
                "allow look moon => allow look: the field is not known. Give --field, or --eyepiece as one of finder, eyepiece, reticle.",
                "allow look moon --eyepiece plossl => allow look: the rig has no optic called 'plossl'. Give --field, or --eyepiece as one of finder, eyepiece, reticle.",
                "allow look moon --field 0.5 --eyepiece reticle => allow look: the field is given twice. Give"
                        + " --field or --eyepiece, only one of them.",
                "allow look moon --field 0 => allow look: a field of 0 degrees for 'moon' must be more than 0 and at"
                        + " most 60. Give the true field: eyepiece apparent field / magnification.",
                "allow look moon --field 1 --stay 0 => allow look: staying in the field for 0 minutes for 'moon'"
                        + " must be more than 0 and at most 720. Give how long an object should stay in the field"
                        + " untouched; 15 minutes is a long look.",
                "allow look moon --field 1 --go-to 0 => allow look: a go-to within 0 arcminutes for 'moon' must be"
                        + " more than 0 and at most 1800. Give how far from the centre it may land; more than half"
                        + " the finder's field does not help.",
                "allow look moon --field 1 --stay 1e9 => allow look --stay: '1e9' is not a number. Write digits,"
                        + " such as 5 or 2.5.",
                "allow look => allow look: NAME is missing.",
                "allow shot m31 => allow shot: --exposure SECONDS is missing.",
                "allow shot m31 --exposure 60 => allow shot: the rig has no camera. Give --focal-length and --pixel,"
                        + " or add the camera to the rig file.",
                "allow shot m31 --exposure 60 --camera big => allow shot: the rig has no camera called 'big', or any"
                        + " other. Give --focal-length and --pixel, or add the camera to the rig file.",
                "allow shot m31 --exposure 60 --pixel 3.76 => allow shot: --pixel needs --focal-length. Give both.",
                "allow shot m31 --exposure 60 --pixel 0 --focal-length 500 => allow shot --pixel: 0 micrometres is outside 0.5 to 100. Give the width of an unbinned pixel in micrometres.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length -5 => allow shot --focal-length: -5 millimetres is outside 1 to 20000. Give the focal length of lens or telescope in millimetres.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --size big => allow shot --size: 'big' is"
                        + " not a size in pixels. Write width and height, such as 4144x2822.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --binning 0 => allow shot: binning 0 is"
                        + " outside 1 to 8. 1 means no binning.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --tolerance wide => allow shot"
                        + " --tolerance: 'wide' is not a trail length. Write arcseconds, such as 2.5, or pixels: 2px.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --guided -1 => allow shot --guided: a"
                        + " guide star '-1' arcminutes away is outside 0 to 1200. Give its distance from the centre"
                        + " of the picture, such as 20, or nothing for the usual.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --seeing 0 => allow shot --seeing: 0 arcseconds is outside 0.1 to 30. Give the FWHM of a star; 3 is usual.",
                "allow shot m31 --exposure -1 --pixel 4 --focal-length 500 => allow shot: an exposure of -1 s for"
                        + " 'm31' must be more than 0 and at most 10800. Give one exposure in seconds.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --target m31 --above 30 => allow shot:"
                        + " the part of the sky is given twice. Give only one of --target, --declination and --above.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --at 2026-11-25T21:00Z => allow shot:"
                        + " --at needs a target. Give --target.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --declination 20 => allow shot:"
                        + " --declination needs --hours. Give both, or give --target.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --declination 20 --hours 1 => allow shot"
                        + " --hours: '1' is not a range of hour angles. Write hours from the meridian, the earlier"
                        + " first, east negative or with its letter: -2,1.5 or 2E,1.5W.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --declination 20 --hours 2,1 => allow"
                        + " shot: the hour angles of 'declination +20°' run backward or span more than a day. Give"
                        + " the earlier first, west positive.",
                "allow shot m31 --exposure 60 --pixel 4 --focal-length 500 --declination -60 --hours 0,1 => allow"
                        + " shot: declination −60° is below the horizon at the beginning (altitude -24.6°). Choose"
                        + " another time, or a target that is up.",
                "allow shot sun --exposure 1 --pixel 4 --focal-length 500 --target sun => allow shot: the Sun cannot"
                        + " be a target here. Never point there without a proper solar filter.",
                "allow shot sun --exposure 1 --pixel 4 --focal-length 500 --target vegq => allow shot --target:"
                        + " nothing in the sky is called 'vegq'. Did you mean Vega?",
                "allow shot all --exposure 1 --pixel 4 --focal-length 500 --above 90 => allow shot: a lowest"
                        + " altitude of 90 degrees is outside 5 to 85. Give the lowest altitude you observe at; 30"
                        + " is usual.",
                "allow drop ring => allow drop: nothing in tonight's work is called 'ring'. Set what tonight is for: polewright allow --for=….",
            })
    void invalidWork_isRefusedInOneLine(String typed, String complaint) {
        Outcome refused = type(typed);
        assertThat(refused.complaint()).isEqualTo("polewright " + complaint);
        assertThat(refused.status()).isEqualTo(2);
        assertThat(refused.out()).isEmpty();
        assertThat(person.events()).isEqualTo(1);
    }

    @Test
    void lastItem_cannotBeDropped() {
        good("allow --for planets");
        assertThat(type("allow drop planets at high power").complaint())
                .isEqualTo(
                        "polewright allow drop: 'planets at high power' is the only item of tonight's work. Set other work: polewright allow --for=….");
        assertThat(type("allow drop moon").complaint())
                .isEqualTo(
                        "polewright allow drop: nothing in tonight's work is called 'moon'. Remove one of planets at high power.");
    }

    @Test
    void nextNight_keepsTheWork() {
        good("allow --for short subs" + CAMERA);
        good("allow --also planets");
        person.waitMinutes(1440);
        assertThat(flat(good("begin")))
                .startsWith(
                        "Begun: Larkfell (54.60° N, 2.90° W, 240 m), fork (fork on a wedge), for short subs, planets at"
                                + " high power as last time.");
        assertThat(items()).containsExactly("short subs", "planets at high power");
        assertThat(person.events()).isEqualTo(2);
        assertThat(person.good("log").lines().get(0)).endsWith("begun at Larkfell with fork");
        good("undo");
        assertThat(flat(person.good("log"))).contains("begun at Larkfell with fork, allowed within 5′ of the pole");
        assertThat(flat(good("begin --again --for casual"))).contains(" for a casual look. ");
        assertThat(items()).containsExactly("a casual look");
        assertThat(flat(good("begin --allow 2"))).contains("allowed within 2′ of the pole.");
        assertThat(flat(good("begin"))).contains("allowed within 5′ of the pole.");
    }

    /**
     * A declination that rises at Larkfell never rises at Tussock Flat, so a new site means checking the work again.
     */
    @Test
    void nextNight_whereTheWorkIsImpossible_saysSo() {
        good("allow shot pole --exposure 30 --declination 80 --hours 0,1" + CAMERA);
        person.waitMinutes(1440);
        assertThat(flat(good("begin --as-typed --site " + TUSSOCK_FLAT)))
                .contains("allowed within 5′ of the pole. NOTE The last night's work is not carried over: ");
    }

    @Test
    void begin_withLimitAndWork_isRefused() {
        assertThat(type("begin --again --allow 3 --for planets").complaint())
                .isEqualTo("polewright begin: --allow does not depend on the work. Give --allow or --for, not both.");
        assertThat(type("begin --again --for stars").complaint())
                .startsWith("polewright begin --for: 'stars' is not a kind of work. Write one of ");
    }

    @Test
    void zone_isDrawn() throws IOException {
        good("allow --for planets");
        Path file = person.file("zone.svg");
        assertThat(good("allow --picture " + file + " --dark").out()).endsWith("Drawn: " + file + "\n");
        assertThat(Files.readString(file)).startsWith("<svg").contains("planets at high power");
        assertThat(good("allow --draw").lines())
                .anyMatch(line -> line.contains("north celestial pole"))
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        assertThat(type("allow --picture " + person.file("no/zone.svg")).complaint())
                .endsWith(". Create it, or name a file in an existing folder.");
    }
}
