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

/** Forms that begin a night, log what is done at the wedge, and add notes. */
public final class NightForms {
    public static final CommandForm BEGIN = new CommandForm(
            "begin",
            "Begin a night",
            "Site, rig and work are carried over from the last one.",
            List.of("begin"),
            List.of(
                    option(
                            "site",
                            "Site: latitude, longitude, height",
                            "54.60,-2.90,240: degrees, north and east positive; metres. Empty: same as last time.",
                            new Words()),
                    option("name", "Name", "", new Words()),
                    option("for", "Tonight is for", "", WorkForms.purposes("same as last time")),
                    option("allow", "Or a plain limit", "5 suits visual observing.", new Figure("′"))
                            .seldom(),
                    option("pressure", "Air pressure", "Empty: standard for the altitude.", new Figure("hPa"))
                            .seldom(),
                    option("temperature", "Temperature", "10 is usual.", new Figure("°C", true))
                            .seldom(),
                    option("at", "When it begins", "With time zone: 2026-11-25T20:00Z. Empty: now.", new Words())
                            .seldom(),
                    option("again", "Begin another night even though one is under way", "", new Tick())
                            .seldom()),
            "Begin",
            false);
    public static final CommandForm HORIZON = new CommandForm(
            "horizon",
            "Skyline",
            "Corners joined by straight lines: azimuth from north through east, and altitude.",
            List.of("horizon"),
            List.of(positional("corners", "Corners", "0,8 95,22.5 180,4 270,15", new Several("\\s+"))
                    .required()),
            "Set it",
            false);
    public static final CommandForm OPEN_SKY = new CommandForm(
            "open-sky",
            "Open sky",
            "Removes all corners of the skyline.",
            List.of("horizon", "--open"),
            List.of(),
            "Set an open sky",
            false);
    public static final CommandForm TURN = done(
            "turn",
            "Screws were turned",
            "Clockwise as you look at the head of the screw.",
            List.of("turn"),
            option("azimuth", "Azimuth screw", "1 1/4, or 3/8 ccw, or 2 ccw then 1/2 cw", new Words()),
            option("altitude", "Altitude screw", "", new Words()),
            option("instead-of", "Replaces turn number", "Only to correct a wrong entry.", new Figure("")));
    public static final CommandForm UNLOGGED_TURN = new CommandForm(
            "unlogged-turn",
            "Screws were turned but not logged",
            "You need not know how far. Later sightings will show it.",
            List.of("turn"),
            List.of(
                    option(
                                    "unlogged-after",
                                    "After event number",
                                    "The last event before they were turned.",
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
            "knock", "The mount was knocked or moved", "Earlier sightings then count for little.", List.of("knock"));
    public static final CommandForm SKIP = new CommandForm(
            "skip",
            "A sighting is not possible",
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
                                            new Option("hidden", "a tree or roof is in the way"),
                                            new Option("cloud", "cloud"),
                                            new Option("no-optic", "the eyepiece or finder is missing"),
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
                                    new Option("still-point", "centre of rotation"),
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
                            "Note",
                            String.format(Locale.ROOT, "Up to %,d characters.", NightEvent.Noted.LONGEST),
                            new Words())
                    .required());
    public static final CommandForm UNDO = new CommandForm(
            "undo",
            "Take back an event",
            "It stays in the log but no longer counts.",
            List.of("undo"),
            List.of(positional("seq", "Number of the event", "", new Figure("")).required()),
            "Take it back",
            false);

    public static final CommandForm RETIME = new CommandForm(
            "retime",
            "The clock was wrong",
            "Corrects the times of events logged by it. Times that were typed stay.",
            List.of("retime"),
            List.of(
                    option("add", "Minutes to add", "Negative if the clock was ahead.", new Figure("min", true))
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
