package polewright.session.jsonl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;
import polewright.sky.fields.BodyNames;

/** The whole message for each way in which a line can be wrong. Every file has a valid begin on line 1. */
class RefusalTest {
    private static final String BEGIN = "{'at':'2026-01-15T18:00:00Z','event':'begin','site_name':'Larkfell',"
            + "'site':{'lat_deg':54.6,'lon_deg':-2.9,'height_m':240}}";
    private static final String PLACE = "'star':'Vega','place':{'ra_deg':279.2,'dec_deg':38.8}";
    private static final String DRIFT = "'event':'drift','at':'2026-01-15T21:00:00Z'," + PLACE;

    private static String refusal(String... lines) throws IOException {
        String file = String.join("\n", lines).replace('\'', '"');
        Reading reading = JsonLines.read(new StringReader(file), BodyNames.NONE);
        assertThat(reading).isInstanceOf(Reading.Refused.class);
        return Objects.requireNonNull(((Reading.Refused) reading).why().getMessage());
    }

    private static String refusalOf(String line) throws IOException {
        String message = refusal(BEGIN, "", line);
        assertThat(message).startsWith("line 3: ").doesNotContain("\n");
        return message.substring("line 3: ".length());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        [1, 2] | the line begins with "[1, 2]". Write each event as one JSON object on a line of its own, as in docs/events.md.
        hello | column 1, near "hello", is not JSON. Write each event as one JSON object on a line of its own, as in docs/events.md.
        {'event':'clamp' | the line is incomplete at column 17. Write each event as one JSON object on a line of its own, as in docs/events.md.
        {'event' 'clamp'} | column 10, near "{"event" "clamp"}", is not JSON. Write each event as one JSON object on a line of its own, as in docs/events.md.
        {'event':'clamp'} {'event':'clamp'} | there is text after the event's closing brace. Write each event as one JSON object on a line of its own, as in docs/events.md.
        {'event':'note','at':'2026-01-15T21:00:00Z','text':'a','text':'b'} | key "text" is given twice, the second time with "b". Keep one of them.
        {'at':'2026-01-15T21:00:00Z'} | event is missing. Add it; docs/events.md describes it.
        {'event':'clamp'} | at is missing. Add it; docs/events.md describes it.
        {'event':'kick','at':'2026-01-15T21:00:00Z'} | event "kick" is unknown. Use begin, compass, scale, bearing, shadow, altitude, still_point, drift, trail, frames, field_drift, turn, correct_turn, unlogged_turn, correct_clock, rig, site, clamp, unclamp, knock, allow, work, centre, horizon, target, skip, note, withdraw.
        {'event':'clamp','at':'2026-01-15T21:00:00'} | at "2026-01-15T21:00:00" has no zone. End it with Z for UTC, or with +01:00 for a clock one hour ahead.
        {'event':'clamp','at':'21:00'} | at "21:00" is not a time. Write it like 2026-01-15T21:30:00Z, in UTC.
        {'event':'clamp','at':'2206-01-15T21:00:00Z'} | at: the time 2206-01-15T21:00:00Z is outside 1972 to 2100. Check the year.
        {'event':'clamp','at':1768512600} | at 1768512600 is not a text. Put it in double quotes.
        {'event':'clamp','at':'2026-01-15T21:00:00Z','tight':true} | key "tight" with true is not known here. The keys are event, seq, at.
        {'event':'clamp','at':'2026-01-15T21:00:00Z','seq':2.5} | seq 2.5 is not a whole number. Count 1, 2, 3 and so on.
        {'event':'clamp','at':'2026-01-15T21:00:00Z','seq':1} | seq 1 does not come after 1. Number the events upward, or leave seq out.
        {'event':'clamp','at':'2026-01-15T21:00:00Z','seq':2000000000} | seq 2000000000 is beyond 1000000000. Number the events from 1, or leave seq out.
        {'event':'turn','at':'2026-01-15T21:00:00Z','azimuth_turns':'two'} | azimuth_turns "two" is not a number. Give a plain number such as 2.5, without quotes.
        {'event':'turn','at':'2026-01-15T21:00:00Z','azimuth_turns':NaN} | azimuth_turns NaN is not a finite number. Give a plain number such as 2.5.
        {'event':'turn','at':'2026-01-15T21:00:00Z','azimuth_turns':1e999} | azimuth_turns 1e999 is not a finite number. Give a plain number such as 2.5.
        {'event':'turn','at':'2026-01-15T21:00:00Z','azimuth_turns':null} | azimuth_turns null is not a number. Give a plain number such as 2.5, without quotes.
        {'event':'turn','at':'2026-01-15T21:00:00Z','azimuth_turns':400} | 400 turns of the azimuth screw are beyond 100. Count whole turns and fractions, clockwise positive.
        {'event':'turn','at':'2026-01-15T21:00:00Z'} | no screw was turned. Give turns of the azimuth or the altitude screw.
        {'event':'note','at':'2026-01-15T21:00:00Z','text':' '} | text " " is empty. Write something, or leave the key out.
        {'event':'compass','at':'2026-01-15T21:00:00Z','magnetic_bearing_deg':4000,'declination_deg':-0.6} | magnetic_bearing_deg 4000 is beyond a whole turn. Give degrees, from -360 to 360.
        {'event':'scale','at':'2026-01-15T21:00:00Z','altitude_deg':54,'sigma_deg':0} | an uncertainty of 0 degrees is outside 0.05 arcseconds to 60 degrees. Give the uncertainty of the reading, 1 sigma.
        {'event':'allow','at':'2026-01-15T21:00:00Z','allowance':5} | allowance 5 is not an object. Put its keys and values between { and }.
        {'event':'allow','at':'2026-01-15T21:00:00Z','allowance':{'shape':'square','radius_arcmin':5}} | allowance.shape "square" is not known. Use disc.
        {'event':'allow','at':'2026-01-15T21:00:00Z','allowance':{'shape':'disc','radius_arcmin':0}} | allowance: an allowance of 0 arcminutes is outside 0.05 to 600. Give how far the axis may be off the pole, in arcminutes; 5 suits visual observing.
        {'event':'begin','at':'2026-01-15T21:00:00Z','site_name':'Larkfell','site':{'lat_deg':54.6,'lon_deg':-2.9}} | event 2 begins a night that has already begun. Keep each night in a file of its own.
        {'event':'withdraw','at':'2026-01-15T21:00:00Z','withdrawn_seq':1} | event 1 cannot be taken back because it begins the night. Begin a new night instead; this one stays in the log.
        {'event':'withdraw','at':'2026-01-15T21:00:00Z','withdrawn_seq':2} | there is no earlier event 2 in this night. Give the number of an earlier event.
        {'event':'bearing','at':'2026-01-15T21:00:00Z','body':'sun','clockwise_deg':3} | sighting along the base at the Sun can blind you. Use the shadow of a plumb line instead.
        {'event':'bearing','at':'2026-01-15T21:00:00Z','clockwise_deg':3} | star is missing. Name the star, or give "body" for the Sun, the Moon or a planet.
        {'event':'bearing','at':'2026-01-15T21:00:00Z','star':'Vega','body':'sun'} | star "Vega" and a body are both given. Keep the one that was observed.
        {'event':'bearing','at':'2026-01-15T21:00:00Z','star':'Vegga','clockwise_deg':3} | star "Vegga" is not a known name. Check the spelling, or give its position (ra_deg, dec_deg).
        """)
    void line_isRefused_namingTheError(String line, String message) throws IOException {
        assertThat(refusalOf(line)).isEqualTo(message);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        'count':2,'unit':'arcseconds','toward':'north' | minutes is missing. Add it; docs/events.md describes it.
        'minutes':0,'count':2,'unit':'arcseconds','toward':'north' | a drift of 0 minutes is outside 0 to 360. Give how long the star was watched, at least a minute or two.
        'minutes':1e9,'count':2,'unit':'arcseconds','toward':'north' | minutes 1e9 is more than a night. Give how many minutes it took.
        'minutes':5,'count':2,'unit':'inches','toward':'north' | unit "inches" is not known. Use one of arcseconds, divisions, fields, pixels.
        'minutes':5,'count':0.1,'unit':'fields','field_deg':0,'toward':'north' | 0 degrees for one of the field widths is outside 0 to 60. Give the true field width in degrees, above 0.
        'minutes':5,'count':-2,'unit':'arcseconds','toward':'north' | a length of -2 arcseconds is not possible. Give 0 or more, and the direction separately.
        'minutes':5,'count':2,'unit':'arcseconds','per_unit_arcsec':3,'toward':'north' | key "per_unit_arcsec" with 3 is not known here. The keys are event, seq, at, seen_at, body, star, place, minutes, count, unit, toward, reticle, sigma_arcsec, instead_of.
        'minutes':5,'count':2,'unit':'arcseconds' | toward is missing. Give "north" or "south", or toward_clock for the edge that was seen.
        'minutes':5,'count':2,'unit':'arcseconds','toward':'west' | toward "west" is not known. Use one of north, south.
        'minutes':5,'count':2,'unit':'arcseconds','toward_clock':3 | toward_clock 3 alone does not give the direction. Add the view, or west_clock and mirrored.
        'minutes':5,'count':2,'unit':'arcseconds','toward_clock':13,'view':{'orientation':'erect'} | clock direction 13 is outside 0 to 12. 12 is the top of the view, 3 its right edge; 4.5 is half past four.
        'minutes':5,'count':2,'unit':'arcseconds','toward_clock':3,'view':{'orientation':'upside'} | view.orientation "upside" is not known. Use one of erect, inverted, mirrored.
        'minutes':5,'count':2,'unit':'arcseconds','toward_clock':3,'west_clock':9,'mirrored':'no' | mirrored "no" is neither true nor false. Give true or false, without quotes.
        """)
    void drift_isRefused_namingTheError(String keys, String message) throws IOException {
        assertThat(refusalOf("{" + DRIFT + "," + keys + "}")).isEqualTo(message);
    }

    private static final String FRAME_1 =
            "{'at':'2026-01-15T20:00:00Z','qx':0,'qy':0,'qz':0,'qw':1,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400}}";

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        'at':'2026-01-15T20:01:00Z','qx':0,'qy':0,'qz':0.6,'qw':0.7,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400} | frames[2]: the quaternion (x, y, z, w) has length 0.9219544457, not 1. Give the unit quaternion that turns camera axes to east, north, up.
        'at':'2026-01-15T20:01:00Z','qx':0,'qy':0,'qz':0.6,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400} | frames[2].qw is missing. Add it; docs/events.md describes it.
        'at':'2026-01-15T20:01:00Z','qx':0,'qy':0,'qz':NaN,'qw':1,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400} | frames[2].qz NaN is not a finite number. Give a plain number such as 2.5.
        'at':'2026-01-15T20:01:00Z','qx':0,'qy':0,'qz':0.6,'qw':0.8,'covariance_arcsec2':{'xx':1,'yy':-1,'zz':400} | frames[2]: a variance about y of -1 arcsec² is outside 0.0001 to 1296000000. Give the square of 1 sigma in arcseconds.
        'at':'2026-01-15T20:01:00Z','qx':0,'qy':0,'qz':0.6,'qw':0.8,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400,'xz':30} | frames[2]: the covariance is not positive definite: no errors can be so correlated. Give variances about x, y and z in arcsec², and leave out the covariances if in doubt.
        'at':'2026-01-15T20:01:00Z','qx':0,'qy':0,'qz':0.6,'qw':0.8,'covariance_arcsec2':{'xx':1,'zz':400} | frames[2].covariance_arcsec2.yy is missing. Add it; docs/events.md describes it.
        'at':'2026-01-15T20:01:00Z','qx':0,'qy':0,'qz':0.6,'qw':0.8,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400,'ww':1} | key "frames[2].covariance_arcsec2.ww" with 1 is not known here. The keys are xx, xy, xz, yy, yz, zz.
        'at':'2026-01-15T20:00:00Z','qx':0,'qy':0,'qz':0.6,'qw':0.8,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400} | two frames have the same time, 2026-01-15T20:00:00Z. Give each frame its own time of exposure.
        'at':'2026-01-16T20:00:00Z','qx':0,'qy':0,'qz':0.6,'qw':0.8,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400} | two frames are 24 hours apart (2026-01-15T20:00:00Z and 2026-01-16T20:00:00Z). Give frames of one night, with only right ascension turned between them.
        'at':'2026-01-15T20:01:00Z','qx':0,'qy':0,'qz':0.001,'qw':1,'covariance_arcsec2':{'xx':1,'yy':1,'zz':400} | there is no rotation between the frames (0.11 degrees). Turn right ascension by 30 to 90 degrees between them.
        """)
    void secondFrame_isRefused_namingTheError(String keys, String message) throws IOException {
        assertThat(refusalOf(
                        "{'event':'frames','at':'2026-01-15T21:00:00Z','frames':[" + FRAME_1 + ",{" + keys + "}]}"))
                .isEqualTo(message);
    }

    @Test
    void frames_areRefused_ifNone_one_orTooMany() throws IOException {
        String frames = "{'event':'frames','at':'2026-01-15T21:00:00Z','frames':";
        assertThat(refusalOf(frames + "[]}"))
                .isEqualTo("there is no frame. Turn right ascension by 30 to 90 degrees, nothing else, and take"
                        + " another.");
        assertThat(refusalOf(frames + "[" + FRAME_1 + "]}"))
                .isEqualTo("one frame alone does not give the axis. Turn right ascension by 30 to 90 degrees, nothing"
                        + " else, and take another.");
        assertThat(refusalOf(frames + "[" + (FRAME_1 + ",").repeat(50) + FRAME_1 + "]}"))
                .isEqualTo("51 frames are more than 50. Use three or four, far apart.");
        assertThat(refusalOf(frames + "[],'seen_at':'2026-01-15T20:00:00Z'}")).startsWith("there is no frame");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        'minutes':0 | a sequence of 0 minutes is outside 0 to 360. Give the time from the first frame to the last.
        'north_arcsec':40000 | a drift north of 11.11 degrees is beyond 5. The mount must track the field all the time.
        'dec_deg':100 | a declination of 100 degrees is beyond 90. Give the field's ICRS right ascension and declination in degrees.
        'sigma_north_arcsec':0 | an uncertainty of 0 degrees is outside 0.05 arcseconds to 5 degrees. Give the uncertainty of the reading, 1 sigma.
        """)
    void fieldDrift_isRefused_namingTheError(String key, String message) throws IOException {
        StringBuilder line = new StringBuilder("{'event':'field_drift','at':'2026-01-15T21:00:00Z'");
        for (String good : new String[] {
            "'minutes':12",
            "'ra_deg':83.8",
            "'dec_deg':-5.4",
            "'north_arcsec':-14",
            "'east_arcsec':6",
            "'sigma_north_arcsec':0.4",
            "'sigma_east_arcsec':2"
        }) {
            boolean replaced = key.startsWith(good.substring(0, good.indexOf(':')));
            line.append(',').append(replaced ? key : good);
        }
        assertThat(refusalOf(line + "}")).isEqualTo(message);
    }

    @Test
    void impossibleLatitude_isRefused_namingLineAndObject() throws IOException {
        assertThat(refusal(BEGIN.replace("54.6", "95")))
                .isEqualTo(
                        "line 1: site: latitude 95 is beyond 90 degrees. Give degrees from -90 (south) to 90 (north),"
                                + " latitude before longitude.");
    }

    @Test
    void unknownKeyOfAnInnerObject_isRefused_withItsPathAndTheKnownKeys() throws IOException {
        assertThat(refusal(BEGIN.replace("'height_m'", "'height_ft'")))
                .isEqualTo("line 1: key \"site.height_ft\" with 240 is not known here. The keys are lat_deg, lon_deg,"
                        + " height_m.");
    }

    @Test
    void listEntry_isNamedByItsNumber() throws IOException {
        String rig = "'rig':{'name':'fork','kind':'fork_on_wedge',"
                + "'azimuth_screw':{'geometry':{'kind':'degrees_per_turn','per_turn_deg':0.6},'clockwise':'right'},"
                + "'altitude_screw':{'geometry':{'kind':'push_screw','thread_pitch_mm':1.5,'arm_mm':160},"
                + "'clockwise':'raises'},'level_sigma_deg':1,'clamp_sigma_arcmin':2,"
                + "'optics':[{'name':'finder','field_deg':6,'view':{'orientation':'inverted'}},"
                + "{'name':'eyepiece','field_deg':0,'view':{'orientation':'mirrored'}}]}";
        assertThat(refusal(BEGIN.replaceFirst("\\}$", "X").replaceFirst("\\}X$", "}," + rig + "}")))
                .isEqualTo("line 1: rig.optics[2]: a field width of 0.0 degrees for 'eyepiece' is outside 0 to 60. Give"
                        + " the true field: eyepiece apparent field / magnification.");
    }

    @Test
    void nightWithoutABeginIsRefused() throws IOException {
        assertThat(refusal("{'event':'clamp','at':'2026-01-15T21:00:00Z'}"))
                .isEqualTo("line 1: the first event is a clamp. Begin the night first: site, rig and allowance.");
    }

    @Test
    void emptyFileIsRefused() throws IOException {
        assertThat(refusal("", "  "))
                .isEqualTo("there is no event in it. Give a file with one event a line, a begin first.");
    }

    @Test
    void stillPointInPixels_requiresAnUncertainty() throws IOException {
        assertThat(refusalOf("{'event':'still_point','at':'2026-01-15T21:00:00Z'," + PLACE
                        + ",'count':3,'unit':'divisions','per_unit_arcsec':15,'star_clock':4,"
                        + "'view':{'orientation':'erect'}}"))
                .isEqualTo("sigma_deg is missing, and a distance in reticle divisions does not give it. Give the"
                        + " uncertainty of the star's position, 1 sigma.");
    }

    @Test
    void refusalFromNameLookup_isPassedOn() throws IOException {
        BodyNames names = name -> {
            throw new InputRefused("star '" + name + "' is unknown", "did you mean Vega");
        };
        String line = "{'event':'altitude','at':'2026-01-15T21:00:00Z','star':'Vegga','axis_above_deg':3}";
        Reading reading = JsonLines.read(new StringReader((BEGIN + "\n" + line).replace('\'', '"')), names);
        assertThat(((Reading.Refused) reading).why()).hasMessage("line 2: star 'Vegga' is unknown. Did you mean Vega.");
    }

    @Test
    void message_isShortAndOnOneLine_forAnyValue() throws IOException {
        String message = refusalOf("{'event':'" + "x\\n".repeat(500) + "','at':'2026-01-15T21:00:00Z'}");
        String ofOneLetter = refusalOf("{'event':'x','at':'2026-01-15T21:00:00Z'}");
        assertThat(message).hasSizeLessThan(ofOneLetter.length() + 45).doesNotContain("\n");
        assertThat(refusalOf("{'a':" + "[".repeat(900) + "]}".repeat(1)))
                .isEqualTo("the brackets are nested more than 10 deep. Write each event as one JSON object on a line of"
                        + " its own, as in docs/events.md.");
        assertThat(refusalOf("{'a':".repeat(30)))
                .isEqualTo("the braces are nested more than 10 deep. Write each event as one JSON object on a line of"
                        + " its own, as in docs/events.md.");
    }

    @Test
    void names_areLookedUpOnlyForStarsWithoutAPosition() throws IOException {
        BodyNames none = name -> {
            throw new AssertionError("looked up " + name);
        };
        String line = "{" + DRIFT + ",'minutes':5,'count':2,'unit':'arcseconds','toward':'north'}";
        assertThat(JsonLines.read(new StringReader((BEGIN + "\n" + line).replace('\'', '"')), none))
                .isInstanceOf(Reading.Accepted.class);
        assertThat(BodyNames.NONE.find("Vega")).isEqualTo(Optional.empty());
    }
}
