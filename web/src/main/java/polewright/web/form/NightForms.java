package polewright.web.form;

import static polewright.web.form.Field.option;
import static polewright.web.form.Field.positional;

import java.util.List;
import java.util.Locale;
import polewright.session.event.NightEvent;
import polewright.web.form.Field.Choice;
import polewright.web.form.Field.Figure;
import polewright.web.form.Field.Option;
import polewright.web.form.Field.Several;
import polewright.web.form.Field.Tick;
import polewright.web.form.Field.Words;

/** How a night begins, what is done at the wedge in it, and what is to be remembered. */
public final class NightForms {
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
                    option("for", "Tonight is for", "", WorkForms.purposes("as last time")),
                    option("allow", "Or a plain limit", "5 suits looking by eye.", new Figure("′"))
                            .seldom(),
                    option("pressure", "Pressure of the air", "Empty: usual for the height.", new Figure("hPa"))
                            .seldom(),
                    option("temperature", "Temperature", "10 is usual.", new Figure("°C", true))
                            .seldom(),
                    option("at", "When it begins", "With zone: 2026-11-25T20:00Z. Empty: now.", new Words())
                            .seldom(),
                    option("again", "Begin another night although one is under way", "", new Tick())
                            .seldom()),
            "Begin",
            false);
    public static final CommandForm HORIZON = new CommandForm(
            "horizon",
            "What hides the sky",
            "Corners of the skyline, joined by straight lines: azimuth from north through east, and altitude.",
            List.of("horizon"),
            List.of(positional("corners", "Corners", "0,8 95,22.5 180,4 270,15", new Several("\\s+"))
                    .required()),
            "Set it",
            false);
    public static final CommandForm OPEN_SKY = new CommandForm(
            "open-sky",
            "Nothing hides the sky",
            "All corners of the skyline are taken away.",
            List.of("horizon", "--open"),
            List.of(),
            "The sky is open",
            false);
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
    public static final CommandForm UNLOGGED_TURN = new CommandForm(
            "unlogged-turn",
            "Screws were turned but not logged",
            "You need not know how far: later sightings will show it.",
            List.of("turn"),
            List.of(
                    option(
                                    "unlogged-after",
                                    "After event number",
                                    "The last one before they were turned.",
                                    new Figure(""))
                            .required(),
                    option(
                            "screw",
                            "Which screw",
                            "",
                            new Choice(List.of(
                                    new Option("", "one or both"),
                                    new Option("azimuth", "azimuth"),
                                    new Option("altitude", "altitude"))))),
            "Log it",
            false);
    public static final CommandForm CLAMP =
            done("clamp", "Clamps are tight", "Gently, a little on each in turn.", List.of("clamp"));
    public static final CommandForm UNCLAMP = done("unclamp", "Clamps are loose", "", List.of("unclamp"));
    public static final CommandForm KNOCK = done(
            "knock",
            "The mount was knocked or moved",
            "What was sighted before then counts for little.",
            List.of("knock"));
    public static final CommandForm SKIP = new CommandForm(
            "skip",
            "A sighting cannot be taken",
            "The next best one is advised instead.",
            List.of("skip"),
            List.of(
                    positional(
                                    "reason",
                                    "Why",
                                    "",
                                    new Choice(List.of(
                                            new Option("not-found", "the star cannot be found"),
                                            new Option("not-in-view", "the pole star is not in view"),
                                            new Option("hidden", "a tree or roof hides the star"),
                                            new Option("cloud", "cloud there"),
                                            new Option("no-optic", "no such eyepiece or finder"),
                                            new Option("no-instrument", "no compass, scale, plumb line or camera"))))
                            .required(),
                    option(
                            "sighting",
                            "Which sighting",
                            "",
                            new Choice(List.of(
                                    new Option("", "the one advised now"),
                                    new Option("compass", "compass"),
                                    new Option("scale", "level and scale"),
                                    new Option("shadow", "shadow"),
                                    new Option("still-point", "still point"),
                                    new Option("drift", "drift"),
                                    new Option("frames", "camera frames")))),
                    option("star", "Star", "Empty: the one advised.", new Words()),
                    option("optic", "Missing optic", "Only if an eyepiece or finder is missing.", new Words())),
            "Log it",
            true);
    public static final CommandForm NOTE = done(
            "note",
            "Write a note",
            "",
            List.of("note"),
            positional(
                            "text",
                            "What should be remembered",
                            String.format(Locale.ROOT, "Up to %,d characters.", NightEvent.Noted.LONGEST),
                            new Words())
                    .required());
    public static final CommandForm UNDO = new CommandForm(
            "undo",
            "Take an event back",
            "It stays in the log, and no longer counts.",
            List.of("undo"),
            List.of(positional("seq", "Number of the event", "", new Figure("")).required()),
            "Take it back",
            false);

    public static final CommandForm RETIME = new CommandForm(
            "retime",
            "The clock was off",
            "Corrects the times of events that were logged by it. Times that were typed stay.",
            List.of("retime"),
            List.of(
                    option("add", "Minutes to add", "Below zero if the clock was ahead.", new Figure("min", true))
                            .required(),
                    positional("first", "From event number", "", new Figure("")).required(),
                    positional("last", "To event number", "Empty: to the last.", new Figure(""))),
            "Correct them",
            false);

    private NightForms() {}

    static List<CommandForm> all() {
        return List.of(BEGIN, HORIZON, OPEN_SKY, TURN, UNLOGGED_TURN, CLAMP, UNCLAMP, KNOCK, SKIP, NOTE, UNDO, RETIME);
    }

    private static CommandForm done(String id, String title, String intro, List<String> command, Field... fields) {
        return new CommandForm(id, title, intro, command, List.of(fields), "Log it", true);
    }
}
