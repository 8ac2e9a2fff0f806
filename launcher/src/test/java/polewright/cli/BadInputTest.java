package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;
import polewright.operations.CommandRun.Outcome;

/** Unusable input is refused in one line with the value and the remedy, and the log does not change. */
@Tag("slow")
class BadInputTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void beginWithTwoSightings() {
        person = new CommandRun(folder, "2026-01-15T20:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
        person.good("sight", "compass", "3");
        person.good("sight", "scale", "54");
    }

    @Test
    void portInUse_suggestsAnotherPort() throws IOException {
        try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            int port = other.getLocalPort();
            assertThat(type("serve --port " + port).err())
                    .contains("serve: port " + port + " cannot be used", "another program", "such as --port ");
        }
    }

    /** Splits a command line at spaces. A bar is a space within a word, a tilde an empty word. */
    private Outcome type(String typed) {
        String before = person.good("log", "--json").out();
        Outcome outcome = person.run(List.of(typed.split(" ", -1)).stream()
                .map(word -> word.equals("~") ? "" : word.replace('|', ' '))
                .toArray(String[]::new));
        assertThat(person.good("log", "--json").out()).isEqualTo(before);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err()).doesNotContain("Exception", "\tat ");
        return outcome;
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            quoteCharacter = '`',
            value = {
                "serve --port 70000 => serve: port 70000 is outside 0 to 65535. Leave --port out, or name another.",
                "serve --port -1 => serve: port -1 is outside 0 to 65535. Leave --port out, or name another.",
                "serve --port x => serve --port: 'x' is not a whole number. Write digits, such as 7.",
                "serve --port 9999999999 => serve --port: '9999999999' is far too large a number. Check it, and"
                        + " write a smaller one.",
                "where vega --site 95,2 => where --site: latitude 95 is beyond 90 degrees. Give degrees from -90"
                        + " (south) to 90 (north), latitude before longitude.",
                "begin --site 54.6,999 => begin --site: longitude 999 is outside -180 to 180 degrees. Give latitude"
                        + " first, then longitude, east positive.",
                "begin --site 54.6|N,2.9|W => begin --site: '54.6 N,2.9 W' is not a site. Write"
                        + " latitude,longitude[,height]: degrees, north and east positive, metres; for example"
                        + " 54.60,-2.90,240.",
                "where vega --at 2026-01-01T20:00 => where --at: the time '2026-01-01T20:00' has no time zone. Add Z"
                        + " if it is UTC (2026-01-01T20:00Z), or your offset, such as +01:00.",
                "sight compass 3 --at 2026-01-01 => sight compass --at: the time '2026-01-01' has no time zone. Give"
                        + " the time of day and Z for UTC, such as 2026-01-01T20:00Z.",
                "sight compass 3 --at 20:00 => sight compass --at: '20:00' is not a time. Write it like"
                        + " 2026-11-25T20:00Z (UTC) or 2026-11-25T21:00+01:00.",
                "where vega --site 0,181 => where --site: longitude 181 is outside -180 to 180 degrees. East is"
                        + " positive. Write -179 if you mean that.",
                "where vega --site 54.6,-2.9W => where --site: '-2.9W' has a sign and a letter. Leave out one of"
                        + " them, such as 2.9W.",
                "where vega --site 0x1p3,10 => where --site: '0x1p3,10' is not a site. Write"
                        + " latitude,longitude[,height]: degrees, north and east positive, metres; for example"
                        + " 54.60,-2.90,240.",
                "where vega --site 54.6,-2.9,1e2 => where --site: '54.6,-2.9,1e2' is not a site. Write"
                        + " latitude,longitude[,height]: degrees, north and east positive, metres; for example"
                        + " 54.60,-2.90,240.",
                "horizon 0x1p3,10 0,0 => horizon: '0x1p3,10' is not a skyline corner. Write azimuth,altitude in"
                        + " degrees, azimuth from north through east; for example 95,22.5.",
                "horizon 10,5d 0,0 => horizon: '10,5d' is not a skyline corner. Write azimuth,altitude in degrees,"
                        + " azimuth from north through east; for example 95,22.5.",
                "sight drift rigel --minutes 5 --moved 1 --unit arcsec --toward 6f => sight drift: '6f' is not a"
                        + " direction. Give north or south, or a clock direction in the view such as 6 or 4.5.",
                "where vega --at 1500-01-01T00:00Z => where --at: the time 1500-01-01T00:00:00Z is outside 1972 to"
                        + " 2100. Check the year.",
                "sight drift rigel --minutes 0 --moved 2 --toward south => sight drift: a drift of 0 minutes is"
                        + " outside 0 to 360. Give how long the star was watched, at least a minute or two.",
                "sight drift rigel --minutes abc --moved 2 --toward south => sight drift --minutes: 'abc' is not a"
                        + " number. Write digits, such as 5 or 2.5.",
                "sight drift rigel --minutes 1,5 --moved 2 --toward south => sight drift --minutes: '1,5' has a"
                        + " comma. Write a decimal point: 1.5.",
                "sight drift rigel --minutes NaN --moved 2 --toward south => sight drift --minutes: 'NaN' is not a"
                        + " number. Write digits, such as 5 or 2.5.",
                "sight drift rigel --minutes 5 --moved -1 --unit arcsec --toward n => sight drift: a length of -1"
                        + " arcseconds is not possible. Give 0 or more, and the direction separately.",
                "sight drift rigel --minutes 5 --moved 1 --unit arcsec --toward sideways => sight drift: 'sideways'"
                        + " is not a direction. Give north or south, or a clock direction in the view such as 6 or"
                        + " 4.5.",
                "sight drift rigel --minutes 5 --moved 1 --unit arcsec --toward 13 --view erect => sight drift:"
                        + " clock direction 13 is outside 0 to 12. 12 is the top of the view, 3 its right edge; 4.5"
                        + " is half past four.",
                "sight drift rigel --minutes 5 --moved 1 --unit arcsec --toward 6 => sight drift: the orientation"
                        + " of the view is not known. Give --with, or --view as erect, inverted or mirrored (the rig has"
                        + " finder, eyepiece, reticle).",
                "sight drift rigel --minutes 5 --moved 1 --toward n => sight drift: the unit of the drift is"
                        + " missing. Use --with for an optic that has a reticle, or --unit with arcsec, divisions, radii,"
                        + " fields or pixels.",
                "begin => begin: a night is under way, with 3 events, the last at 2026-01-15T20:00:00Z. Continue it,"
                        + " or add --again to begin another. To correct its rig or site: polewright rig correct,"
                        + " polewright site correct.",
                "sight drift rigel --minutes 5 --moved 1 --toward n --unit pixels => sight drift: the angle of one"
                        + " pixel is not known. Give --per.",
                "sight drift rigel --minutes 5 --moved 1 --toward n --unit pixels --per 0 => sight drift: 0"
                        + " arcseconds in one pixel is not above 0. Give the angle of one pixel, such as 1.2.",
                "sight drift rigel --minutes 5 --moved 1 --unit arcsec --toward n --sigma 0 => sight drift: an"
                        + " uncertainty of 0 arcseconds is not above 0. Give the uncertainty of the drift; half a"
                        + " division is usual.",
                "sight drift rigel --minutes 5 --moved 1 --toward n --unit miles => sight drift --unit: 'miles' is"
                        + " not one of the choices. Use divisions, radii, fields, arcsec or pixels.",
                "sight drift rigel --minutes 5 => sight drift: --moved N, --toward WHERE are missing.",
                "sight drift rigel --minutes 5 --minutes 6 --moved 1 --toward n => sight drift: --minutes is given"
                        + " twice. Give it once.",
                "sight still polaris --distance 0.1 --toward 3 --field 0 --view erect => sight still: a field width"
                        + " of 0 degrees is outside 0 to 60. Give the true field: eyepiece apparent field /"
                        + " magnification.",
                "sight still polaris --distance 0.1 --toward 3 --with telescope => sight still: the rig has no optic"
                        + " called 'telescope'. Give --field and --view (the rig has finder, eyepiece, reticle).",
                "sight compass 1000 => sight compass BEARING: 1000 degrees is beyond 360. Read the compass again.",
                "sight compass 10000000000 => sight compass BEARING: 10000000000 degrees is beyond 360. Read"
                        + " the compass again.",
                "sight compass 3 --sigma 0 => sight compass: an uncertainty of 0 degrees is outside 0.05 arcseconds"
                        + " to 60 degrees. Give the uncertainty of the reading, 1 sigma.",
                "sight scale 100 => sight scale ALTITUDE: 100 degrees is beyond 90. Read the scale" + " again.",
                "sight shadow 5 --bogus => sight shadow: unknown option '--bogus'. Did you mean --body?",
                "sight bearing sun 30 --at 2026-01-15T12:00Z => sight bearing: sighting along the base at the Sun"
                        + " can blind you. Use the shadow of a plumb line instead.",
                "sight altitude sun 3 --at 2026-01-15T12:00Z => sight altitude: never point the tube at the Sun. Use"
                        + " a star, or a shadow for the azimuth.",
                "sight => sight: a word is missing. Add compass, scale, shadow, still, drift, trail, bearing, altitude,"
                        + " frames or drift-frames.",
                "attitude => attitude: FRAME is missing.",
                "attitude a.fits --near vegq => attitude --near: nothing in the sky is called 'vegq'. Did you mean"
                        + " Vega?",
                "attitude a.fits --near 400,10 => attitude --near: right ascension 400 is outside 0 to 360 degrees."
                        + " Give degrees, not hours: RA,DEC such as 279.23,38.78.",
                "attitude a.fits --within 5 => attitude: --within needs a place. Add --near PLACE.",
                "attitude a.fits --near pole --within 0 => attitude: --within 0 is outside 0 to 180 degrees. Give"
                        + " how far from there the frame may be, such as 10.",
                "attitude a.fits --scale wide => attitude --scale: 'wide' is not a scale. Write arcseconds per"
                        + " pixel, optionally with an uncertainty in percent: 2.5 or 2.5,10%.",
                "attitude a.fits --scale 0 => attitude --scale: a scale of 0 to 0 arcseconds per pixel cannot be"
                        + " used. Give the angle of one pixel, such as 2.5, or the focal length and the width of a"
                        + " pixel.",
                "attitude a.fits --scale 2,100 => attitude --scale: a scale known to 100 % cannot be used."
                        + " Give more"
                        + " than 0 and less than 100.",
                "attitude a.fits --focal-length -5 => attitude: a focal length of -5 mm is not possible. Give it in"
                        + " mm.",
                "attitude a.fits --pixel-size 0 => attitude: a pixel size of 0 microns is not possible. Give it in"
                        + " microns.",
                "attitude a.fits --mirrored maybe => attitude --mirrored: 'maybe' is not one of the choices. Use yes or"
                        + " no.",
                "attitude a.fits --mosaic stripes => attitude --mosaic: 'stripes' is not one of the choices. Use"
                        + " as-the-file-says, bayer or none.",
                "attitude a.fits --zone here => attitude --zone: 'here' is not a time zone. Write Z for UTC, or an"
                        + " offset such as +01:00 or -05:00.",
                "attitude a.fits --at 2026-01-01T20:00 => attitude --at: the time '2026-01-01T20:00' has no time"
                        + " zone. Add Z if it is UTC (2026-01-01T20:00Z), or your offset, such as +01:00.",
                "axis => axis: FRAME is missing.",
                "axis a.fits b.fits --at 2026-01-01T20:00Z => axis: 2 frames but 1 time. Give --at one time per"
                        + " file, in the same order, separated by commas.",
                "axis a.fits b.fits --drive off => axis --drive: 'off' is not one of the choices. Use tracking,"
                        + " standing or not-told.",
                "sight frames => sight frames: FRAME is missing.",
                "watch => watch: FOLDER is missing.",
                "watch . --count 0 => watch: --count 0 is below 1. Give the number of frames.",
                "watch . --until-idle -1 => watch: --until-idle is outside 0 to 86400 seconds. Give how long to wait"
                        + " for another frame.",
                "where vegq => where BODY: nothing in the sky is called 'vegq'. Did you mean Vega?",
                "where xyzzyx => where BODY: nothing in the sky is called 'xyzzyx'. Give a planet, a star such as"
                        + " Vega or alp Lyr, an object such as M 31, or RA,DEC in degrees.",
                "where 400,10 => where BODY: right ascension 400 is outside 0 to 360 degrees. Give degrees, not"
                        + " hours: RA,DEC such as 279.23,38.78.",
                "where 10,95 => where BODY: declination 95 is beyond 90 degrees. Give right ascension first, then"
                        + " declination, in degrees.",
                "where => where: BODY is missing.",
                "where vega altair => where: 'altair' is one word too many. Put text with spaces in quotes.",
                "where vega --pressure 99999 => where: pressure 99999 is outside 0 to 1100 hPa. Give the pressure at"
                        + " the site in hPa (millibars), not inches or mmHg.",
                "where vega --temperature -400 => where: temperature -400 is outside -80 to 60 C. Give degrees"
                        + " Celsius.",
                "where vega --ut1-utc 5 => where: UT1-UTC of 5 s is beyond 0.9 s. Give the value of the IERS"
                        + " bulletin in seconds, or leave it out.",
                "retime --from 7 --by 10min => retime: unknown option '--from'. See its options with --help.",
                "allow --for planets --at 2026-01-15T20:00Z => allow: unknown option '--at'. It belongs to"
                        + " polewright allow look and polewright allow shot.",
                "note dew --at=2026-01-15T20:00Z --bogus=1 => note: unknown option '--bogus'. See its options with"
                        + " --help.",
                "allow --to-the-pole => allow: unknown option '--to-the-pole'. It belongs to polewright allow look"
                        + " and polewright allow shot.",
                "where vega --bogus => where: unknown option '--bogus'. See its options with --help.",
                "ground --mount yoke => ground --mount: 'yoke' is not one of the choices. Use fork-on-wedge,"
                        + " fork-upright, german or tracker.",
                "turn --azimuth abc => turn --azimuth: 'abc' is not a number of turns. Write 1.25, \"1 1/4\", \"3/8"
                        + " ccw\" or \"2 ccw then 1/2 cw\"; clockwise is positive, ccw is the other way.",
                "turn --azimuth 2|ccw|then|1/2|ccw => turn --azimuth: '2 ccw then 1/2 ccw' does not turn back. Give"
                        + " opposite directions, such as \"2 ccw then 1/2 cw\", or add up turns in the same direction.",
                "turn --azimuth 1|then|-1|then|1 => turn --azimuth: '1 then -1 then 1' has more than two legs. Give"
                        + " the turns there and the turns back, such as \"2 ccw then 1/2 cw\", or log each leg.",
                "turn --azimuth 1/0 => turn --azimuth: '1/0' divides by zero. Write a fraction such as 3/8.",
                "turn --azimuth -1|ccw => turn --azimuth: '-1 ccw' has both a minus sign and ccw. Leave out one of"
                        + " them.",
                "turn --azimuth 999 => turn: 999 turns of the azimuth screw are beyond 100. Count whole turns and"
                        + " fractions, clockwise positive.",
                "turn => turn: no screw was turned. Give turns of the azimuth or the altitude screw.",
                "note ~ => note: the note is empty. Write something.",
                "note => note: TEXT is missing.",
                "allow -3 => allow: an allowance of -3 arcminutes is outside 0.05 to 600. Give how far the axis may"
                        + " be off the pole, in arcminutes; 5 suits visual observing.",
                "allow 0 => allow: an allowance of 0 arcminutes is outside 0.05 to 600. Give how far the axis may be"
                        + " off the pole, in arcminutes; 5 suits visual observing.",
                "begin --allow -3 => begin: an allowance of -3 arcminutes is outside 0.05 to 600. Give how far the"
                        + " axis may be off the pole, in arcminutes; 5 suits visual observing.",
                "begin --name ~ => begin: the site's name is empty. Give one, such as Larkfell, or leave --name out.",
                "undo abc => undo SEQ: 'abc' is not a whole number. Write digits, such as 7.",
                "log imprt => log: unknown command 'imprt'. Did you mean import?",
                "log --night one => log --night: 'one' is not a whole number. Write digits, such as 7.",
                "replay => replay: FILE is missing.",
                "replay ~ => replay FILE: the file's name is empty. Name a file.",
            })
    void wrongUsage_isReportedWithStatus2(String typed, String complaint) {
        Outcome outcome = type(typed);
        assertThat(outcome.complaint()).isEqualTo("polewright " + complaint);
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err().lines().skip(1).toList())
                .singleElement()
                .asString()
                .startsWith("Usage: polewright ")
                .endsWith(" --help");
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            quoteCharacter = '`',
            value = {
                "sight drift canopus --minutes 5 --moved 1 --unit arcsec --toward n => sight drift: event 4: Canopus"
                        + " was 24 degrees below the horizon at 2026-01-15T19:55:00Z. Check the name, the time (UTC)"
                        + " and the site. It would have been up if latitude and longitude of the site were"
                        + " exchanged.",
                "undo 1 => undo: event 1 cannot be taken back because it begins the night. Begin a new night"
                        + " instead;"
                        + " this one stays in the log.",
                "undo 99 => undo: there is no earlier event 99 in this night. Give the number of an earlier"
                        + " event.",
                "unclamp => unclamp: the clamps are already loose. Tighten them with polewright clamp.",
            })
    void impossibleRequest_isReportedWithStatus1(String typed, String complaint) {
        Outcome outcome = type(typed);
        assertThat(outcome.err()).isEqualTo("polewright " + complaint + "\n");
        assertThat(outcome.status()).isEqualTo(1);
    }

    @Test
    void secondClamp_isRefused() {
        person.good("clamp");
        assertFails("clamp", "the clamps are already tight. Loosen them first with polewright unclamp.", "clamp");
        assertThat(person.events()).isEqualTo(4);
    }

    @Test
    void unknownNight_isReported() {
        assertFails(
                "log",
                "there is no night 99 in " + person.log() + ". List the nights and choose a number from there.",
                "log",
                "--night",
                "99");
    }

    @Test
    void missingLog_suggestsBegin_andIsNotCreated() {
        CommandRun newcomer = new CommandRun(folder.resolve("new"), "2026-01-15T20:00:00Z");
        for (String command : new String[] {"fix", "advise", "log", "clamp"}) {
            Outcome outcome = newcomer.run(command);
            assertThat(outcome.err())
                    .isEqualTo("polewright " + command + ": there is no log yet at " + newcomer.log()
                            + ". Begin a night first, with polewright begin --site LAT,LON.\n");
            assertThat(outcome.status()).isEqualTo(1);
        }
        assertThat(newcomer.run("begin").complaint())
                .isEqualTo(
                        "polewright begin: no site is known yet. Give --site as latitude, longitude and height (degrees, north and east positive; metres).");
        assertThat(newcomer.log()).doesNotExist();
    }

    private void assertFails(String command, String complaint, String... typed) {
        Outcome outcome = person.run(typed);
        assertThat(outcome.err()).isEqualTo("polewright " + command + ": " + complaint + "\n");
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.out()).isEmpty();
    }
}
