package polewright.app.web.form;

import static polewright.app.web.form.Field.option;
import static polewright.app.web.form.Field.positional;

import java.util.List;
import java.util.stream.Stream;
import polewright.app.web.form.Field.Choice;
import polewright.app.web.form.Field.Figure;
import polewright.app.web.form.Field.Option;
import polewright.app.web.form.Field.Several;
import polewright.app.web.form.Field.Tick;
import polewright.app.web.form.Field.Words;

/** All forms: one for each command that adds to the log and needs no file. */
public final class CommandForms {
    private static final Figure DEGREES = new Figure("°");
    private static final Figure DEGREES_EITHER_WAY = new Figure("°", true);
    private static final Field SIGMA = option(
                    "sigma", "How far off it may be", "Leave it empty for what is usual.", DEGREES)
            .seldom();
    private static final Field STAR = positional("star", "Star", "Such as polaris, rigel, or \"alp Lyr\".", new Words())
            .required();
    private static final Field OPTIC =
            option("with", "Seen through", "An optic of the rig, such as finder.", new Words());
    private static final Field FIELD =
            option("field", "Or the true field, edge to edge", "Only if no optic is named.", DEGREES);
    private static final Field VIEW = option(
            "view",
            "The view is",
            "",
            new Choice(List.of(
                    new Option("", "as the optic has it"),
                    new Option("erect", "erect, as by eye"),
                    new Option("inverted", "upside down"),
                    new Option("mirrored", "mirrored, by a star diagonal"))));

    private static final Field TURNED = option(
                    "turned",
                    "The view is turned by",
                    "Clockwise, such as by a diagonal set sideways.",
                    DEGREES_EITHER_WAY)
            .seldom();
    private static final Words WORDS = new Words();
    private static final Field CAMERA = option("camera", "Camera", "One of the rig's, if it has several.", WORDS)
            .seldom();
    private static final Field FOCAL_LENGTH =
            option("focal-length", "Focal length", "For photographs, if the rig has no camera.", new Figure("mm"));
    private static final Field PIXEL = option("pixel", "Pixel", "", new Figure("µm"));
    private static final Field SIZE =
            option("size", "Pixels of the camera", "4000x3000 is usual.", WORDS).seldom();
    private static final Field BINNING = option(
                    "binning", "Pixels taken together each way", "1 is usual.", new Figure(""))
            .seldom();
    private static final Field WORK_NAME = positional("name", "What to call it", "One that is there is changed.", WORDS)
            .required();
    private static final List<Field> REGION = List.of(
            option("target", "What is looked at", "vega, M 42, jupiter; empty for anything high enough.", WORDS),
            option("at", "When it begins", "With zone: 2026-11-25T20:00Z. Empty: now.", WORDS)
                    .seldom(),
            option("above", "Or anything higher than", "30 is usual.", DEGREES).seldom(),
            option("declination", "Or things at this declination", "With the hours below.", DEGREES_EITHER_WAY)
                    .seldom(),
            option("hours", "Hours from the meridian", "2E,1.5W: from, to.", WORDS)
                    .seldom());

    public static final CommandForm COMPASS = sighting(
            "compass",
            "Read the compass",
            "Sight along the polar axis toward the pole that is up; keep the compass an arm's length from steel.",
            positional("bearing", "Bearing", "From magnetic north, clockwise.", DEGREES)
                    .required(),
            option(
                    "declination",
                    "Magnetic declination",
                    "Leave it empty: it is known for the site and date.",
                    DEGREES_EITHER_WAY),
            SIGMA);
    public static final CommandForm SCALE = sighting(
            "scale",
            "Read level and scale",
            "Level the base first. Then read the wedge's altitude scale.",
            positional("altitude", "Altitude on the scale", "", DEGREES).required(),
            option("from-zenith", "The scale counts down from the zenith", "", new Tick()),
            option("from-horizon", "It counts from the horizon, however odd it looks", "", new Tick())
                    .seldom(),
            SIGMA);
    public static final CommandForm SHADOW = sighting(
            "shadow",
            "Measure from a shadow",
            "Never look at the Sun, nor point tube or finder toward it: keep them capped. Work with the shadow of a"
                    + " plumb line on the ground.",
            positional("angle", "Angle from the shadow to the axis", "Clockwise, seen from above.", DEGREES_EITHER_WAY)
                    .required(),
            option(
                    "body",
                    "What casts the shadow",
                    "",
                    new Choice(List.of(new Option("", "the Sun"), new Option("moon", "the Moon")))),
            SIGMA);
    public static final CommandForm BEARING = sighting(
            "bearing",
            "Measure from a star's bearing",
            "The angle, level with the ground, from the line toward a star to the axis.",
            STAR,
            positional("angle", "Angle from the star to the axis", "Clockwise, seen from above.", DEGREES_EITHER_WAY)
                    .required(),
            SIGMA);
    public static final CommandForm ALTITUDE = sighting(
            "altitude",
            "Measure from a star's altitude",
            "Lay one inclinometer along the axis, then along the tube with the star centred.",
            STAR,
            positional("difference", "Altitude of the axis minus that of the star", "", DEGREES_EITHER_WAY)
                    .required(),
            SIGMA);
    public static final CommandForm STILL = sighting(
            "still",
            "Find the still point",
            "Point the tube along the polar axis and rock it in right ascension: everything goes round one point that"
                    + " stays still. Where does the star stand from it?",
            STAR,
            option("distance", "From the still point to the star", "", new Figure("field widths"))
                    .required(),
            option("toward", "Which way, as on a clock face", "12 is the top; 4.5 is half past four.", new Figure("h"))
                    .required(),
            OPTIC,
            FIELD,
            VIEW,
            TURNED,
            option("sigma", "How far off the place may be", "", new Figure("field widths"))
                    .seldom());
    public static final CommandForm DRIFT = sighting(
            "drift",
            "Watch a star drift",
            "Let the mount track. Watch how far the star goes north or south; its going east or west does not count.",
            STAR,
            option("minutes", "How long it was watched", "", new Figure("min")).required(),
            option("moved", "How far it went", "0 if it did not.", new Figure(""))
                    .required(),
            option(
                    "unit",
                    "Counted in",
                    "",
                    new Choice(List.of(
                            new Option("", "divisions of the reticle"),
                            new Option("fields", "field widths"),
                            new Option("arcsec", "arcseconds"),
                            new Option("pixels", "pixels")))),
            option("per", "One division or pixel", "Only if the optic's is not known.", new Figure("″")),
            option("toward", "Toward", "north or south; or an edge as on a clock face, such as 6.", new Words())
                    .required(),
            option(
                    "west",
                    "Where stars leave with the drive stopped",
                    "A clock direction; for any view.",
                    new Figure("h")),
            OPTIC,
            FIELD,
            VIEW,
            TURNED,
            option("sigma", "How far off the drift may be", "In the unit above.", new Figure(""))
                    .seldom());

    public static final CommandForm TURN = done(
            "turn",
            "Screws were turned",
            "Clockwise as you look at the screw's head.",
            List.of("turn"),
            option("azimuth", "Azimuth screw", "1 1/4, or 3/8 ccw, or 2 ccw then 1/2 cw", new Words()),
            option("altitude", "Altitude screw", "", new Words()),
            option(
                    "instead-of",
                    "In place of turn number",
                    "Only to correct one that was entered wrongly.",
                    new Figure("")));
    public static final CommandForm CLAMP =
            done("clamp", "Clamps are tight", "Gently, a little on each in turn.", List.of("clamp"));
    public static final CommandForm UNCLAMP = done("unclamp", "Clamps are loose", "", List.of("unclamp"));
    public static final CommandForm KNOCK = done(
            "knock",
            "The mount was knocked or moved",
            "What was sighted before then counts for little.",
            List.of("knock"));
    public static final CommandForm NOTE = done(
            "note",
            "Write a note",
            "",
            List.of("note"),
            positional("text", "What should be remembered", "", new Words()).required());
    public static final CommandForm UNDO = new CommandForm(
            "undo",
            "Take an event back",
            "It stays in the log, and no longer counts.",
            List.of("undo"),
            List.of(positional("seq", "Number of the event", "", new Figure("")).required()),
            "Take it back",
            false);

    public static final CommandForm ALLOW_FOR = work(
            "allow-for",
            "What tonight is for",
            "How far off the pole the axis may be follows from it.",
            List.of("allow"),
            option("for", "Tonight is for", "", purposes("choose")).required(),
            CAMERA,
            FOCAL_LENGTH,
            PIXEL,
            SIZE,
            BINNING);
    public static final CommandForm ALLOW_ALSO = work(
            "allow-also",
            "And also for",
            "Beside what there is.",
            List.of("allow"),
            option("also", "Also for", "", purposes("choose")).required(),
            CAMERA,
            FOCAL_LENGTH,
            PIXEL,
            SIZE,
            BINNING);
    public static final CommandForm ALLOW_LIMIT = work(
            "allow-limit",
            "A plain limit instead",
            "Whatever the work.",
            List.of("allow"),
            positional("arcmin", "How far off the pole the axis may be", "5 suits looking by eye.", new Figure("′"))
                    .required());
    public static final CommandForm ALLOW_LOOK = work(
            "allow-look",
            "A look of your own",
            "Through an eyepiece. How long is an object to stay in it with nobody touching the mount?",
            List.of("allow", "look"),
            Stream.concat(
                            Stream.of(
                                    WORK_NAME,
                                    option("eyepiece", "Eyepiece", "One of the rig's, such as finder.", WORDS),
                                    option("field", "Or the true field, edge to edge", "", DEGREES),
                                    option("stay", "How long it is to stay", "15 is usual.", new Figure("min")),
                                    option("go-to", "How near the middle go-tos are to land", "", new Figure("′"))
                                            .seldom()),
                            REGION.stream())
                    .toArray(Field[]::new));
    public static final CommandForm ALLOW_SHOT = work(
            "allow-shot",
            "Pictures of your own",
            "",
            List.of("allow", "shot"),
            Stream.of(
                            Stream.of(
                                    WORK_NAME,
                                    option("exposure", "One exposure", "", new Figure("s"))
                                            .required(),
                                    option("total", "All of them together", "60 is usual.", new Figure("min")),
                                    option(
                                            "guided",
                                            "Guided: from the middle to the guide star",
                                            "Empty if nothing guides; 30 is usual.",
                                            new Figure("′")),
                                    option("tolerance", "How long a trail may be", "2.5 arcseconds, or 2px.", WORDS)
                                            .seldom(),
                                    option("seeing", "How wide stars look", "3 is usual.", new Figure("″"))
                                            .seldom()),
                            Stream.of(CAMERA, FOCAL_LENGTH, PIXEL, SIZE, BINNING),
                            REGION.stream())
                    .flatMap(fields -> fields)
                    .toArray(Field[]::new));
    public static final CommandForm ALLOW_DROP = work(
            "allow-drop",
            "Take something out",
            "",
            List.of("allow", "drop"),
            positional("name", "What", "As it is called above.", WORDS).required());
    public static final CommandForm TARGET = work(
            "target",
            "Something to look at tonight",
            "",
            List.of("target"),
            positional(
                            "body",
                            "What",
                            "moon, saturn, vega, M 31, or right ascension and declination in degrees.",
                            new Words())
                    .required());
    public static final CommandForm HORIZON = work(
            "horizon",
            "What hides the sky",
            "Corners of the skyline, joined by straight lines: azimuth from north through east, and altitude.",
            List.of("horizon"),
            positional("corners", "Corners", "0,8 95,22.5 180,4 270,15", new Several("\\s+"))
                    .required());
    public static final CommandForm OPEN_SKY = new CommandForm(
            "open-sky",
            "Nothing hides the sky",
            "All corners of the skyline are taken away.",
            List.of("horizon", "--open"),
            List.of(),
            "The sky is open",
            false);
    public static final CommandForm CENTRE = new CommandForm(
            "centre",
            "A star was centred",
            "Never centre the Sun. Centre the star in the eyepiece, then copy what the mount shows.",
            List.of("centre"),
            List.of(
                    positional("body", "Star", "Such as capella.", new Words()).required(),
                    option("reads", "The mount shows", "5h17m38s,+46d12m36s", new Words())
                            .required(),
                    option("hour-angle", "It shows hour angle, not right ascension", "", new Tick()),
                    option("j2000", "It counts from the equinox of J2000.0", "", new Tick())
                            .seldom(),
                    option("through-pole", "The fork went through the pole to get there", "", new Tick())
                            .seldom(),
                    option("sigma", "How far off it may be", "1 is usual by eye.", new Figure("′"))
                            .seldom()),
            "Log it",
            true);
    public static final CommandForm BEGIN = new CommandForm(
            "begin",
            "Begin a night",
            "Site, rig and work are remembered from the last one.",
            List.of("begin"),
            List.of(
                    option(
                            "site",
                            "Site: latitude, longitude, height",
                            "54.60,-2.90,240: degrees, north and east positive; metres. Empty: as last time.",
                            new Words()),
                    option("name", "What to call it", "", new Words()),
                    option("for", "Tonight is for", "", purposes("as last time")),
                    option("allow", "Or a plain limit", "5 suits looking by eye.", new Figure("′"))
                            .seldom(),
                    option("pressure", "Pressure of the air", "Empty: usual for the height.", new Figure("hPa"))
                            .seldom(),
                    option("temperature", "Temperature", "10 is usual.", new Figure("°C", true))
                            .seldom(),
                    option("at", "When it begins", "With zone: 2026-11-25T20:00Z. Empty: now.", new Words())
                            .seldom(),
                    option("again", "Begin anew although a night is under way", "", new Tick())
                            .seldom()),
            "Begin",
            false);

    public static final CommandForm PRACTICE_BEGIN = practice(
            "begin",
            "Begin a practice",
            "A night by day: a wedge whose offset is hidden, virtual screws, and time that passes only when you do"
                    + " something.",
            "Begin",
            option("seed", "Number of the practice", "Another number hides another offset.", new Figure("")),
            option("south", "Under the southern sky", "", new Tick()),
            option("site", "Or at your own site", "54.60,-2.90,240; with when it begins.", new Words())
                    .seldom(),
            option("at", "When it begins, in the dark", "With zone: 2026-11-25T20:00Z.", new Words())
                    .seldom(),
            option("camera", "With a camera on the tube", "", new Tick()));
    public static final CommandForm PRACTICE_SCREW = practice(
            "screw",
            "Turn a screw",
            "",
            "Turn",
            positional(
                            "screw",
                            "Screw",
                            "",
                            new Choice(List.of(new Option("azimuth", "azimuth"), new Option("altitude", "altitude"))))
                    .required(),
            positional("turns", "Turns, clockwise", "1/4, 1.25 or 1/2 ccw", new Words())
                    .required());
    public static final CommandForm PRACTICE_CLAMP = practice("clamp", "Tighten the clamps", "", "Tighten");
    public static final CommandForm PRACTICE_UNCLAMP = practice("unclamp", "Loosen the clamps", "", "Loosen");
    public static final CommandForm PRACTICE_MOVE = practice(
            "move",
            "Move the whole mount by hand",
            "Facing the pole.",
            "Move",
            option("right", "To the right", "Below zero for left.", DEGREES_EITHER_WAY),
            option("up", "Up", "Below zero for down.", DEGREES_EITHER_WAY));
    public static final CommandForm PRACTICE_COMPASS = look("compass", "Read the compass");
    public static final CommandForm PRACTICE_SCALE = look("scale", "Read level and scale");
    public static final CommandForm PRACTICE_ROCKING = look(
            "rocking",
            "Rock in right ascension and look",
            option("with", "Seen through", "Empty: what shows most of the sky.", new Words()));
    public static final CommandForm PRACTICE_DRIFT = new CommandForm(
            "practice-drift",
            "Watch a star drift",
            "",
            List.of("practice", "look", "drift"),
            List.of(STAR, option("minutes", "How long", "", new Figure("min")).required()),
            "Watch it",
            false,
            CommandForm.Kind.PRACTICE);
    public static final CommandForm PRACTICE_FRAME = practice(
            "frame",
            "Take a frame",
            "",
            "Take it",
            option("turned", "With right ascension turned from home", "", DEGREES_EITHER_WAY)
                    .required());
    public static final CommandForm PRACTICE_WAIT = practice(
            "wait",
            "Let time pass",
            "",
            "Wait",
            positional("minutes", "Minutes", "", new Figure("min")).required());

    public static final CommandForm DEVICES_REVOKE = new CommandForm(
            "devices-revoke",
            "Let a device in no more",
            "It has to be paired anew to come back.",
            List.of("devices", "revoke"),
            List.of(positional(
                            "device", "Device", "Its name or first word in the list; all for every one.", new Words())
                    .required()),
            "Let it in no more",
            false,
            CommandForm.Kind.DEVICES);

    private static final List<CommandForm> PRACTICE = List.of(
            PRACTICE_BEGIN,
            PRACTICE_SCREW,
            PRACTICE_CLAMP,
            PRACTICE_UNCLAMP,
            PRACTICE_MOVE,
            PRACTICE_COMPASS,
            PRACTICE_SCALE,
            PRACTICE_ROCKING,
            PRACTICE_DRIFT,
            PRACTICE_FRAME,
            PRACTICE_WAIT);
    private static final List<CommandForm> SIGHTINGS = List.of(COMPASS, SCALE, SHADOW, STILL, DRIFT, BEARING, ALTITUDE);
    private static final List<CommandForm> ALL = Stream.concat(
                    SIGHTINGS.stream(),
                    Stream.of(
                            TURN,
                            CLAMP,
                            UNCLAMP,
                            KNOCK,
                            NOTE,
                            UNDO,
                            ALLOW_FOR,
                            ALLOW_ALSO,
                            ALLOW_LIMIT,
                            ALLOW_LOOK,
                            ALLOW_SHOT,
                            ALLOW_DROP,
                            TARGET,
                            HORIZON,
                            OPEN_SKY,
                            CENTRE,
                            BEGIN))
            .toList();

    private CommandForms() {}

    /** The sightings that are typed, the coarse ones first. */
    public static List<CommandForm> sightings() {
        return SIGHTINGS;
    }

    /** Those of the game. */
    public static List<CommandForm> practice() {
        return PRACTICE;
    }

    /** Those of the laptop itself, whatever the night. */
    public static List<CommandForm> house() {
        return List.of(DEVICES_REVOKE);
    }

    /** Those that add to a log. */
    public static List<CommandForm> all() {
        return ALL;
    }

    private static CommandForm sighting(String kind, String title, String intro, Field... fields) {
        return new CommandForm(kind, title, intro, List.of("sight", kind), List.of(fields), "Log this sighting", true);
    }

    private static CommandForm done(String id, String title, String intro, List<String> command, Field... fields) {
        return new CommandForm(id, title, intro, command, List.of(fields), "Log it", true);
    }

    private static CommandForm work(String id, String title, String intro, List<String> command, Field... fields) {
        return new CommandForm(id, title, intro, command, List.of(fields), "Set it", false);
    }

    private static CommandForm practice(String word, String title, String intro, String button, Field... fields) {
        return new CommandForm(
                "practice-" + word,
                title,
                intro,
                List.of("practice", word),
                List.of(fields),
                button,
                false,
                CommandForm.Kind.PRACTICE);
    }

    private static CommandForm look(String what, String title, Field... fields) {
        return new CommandForm(
                "practice-" + what,
                title,
                "",
                List.of("practice", "look", what),
                List.of(fields),
                "Look",
                false,
                CommandForm.Kind.PRACTICE);
    }

    private static Choice purposes(String none) {
        return new Choice(List.of(
                new Option("", none),
                new Option("casual look", "a casual look"),
                new Option("planets at high power", "planets at high power"),
                new Option("short subs", "short subs"),
                new Option("long guided subs", "long guided subs")));
    }
}
