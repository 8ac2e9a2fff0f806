package polewright.web.form;

import static polewright.operations.action.Argument.option;
import static polewright.operations.action.Argument.positional;

import java.util.List;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Several;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.Unit;
import polewright.operations.night.LogActions;
import polewright.operations.night.SkipAction;
import polewright.operations.night.WedgeActions;

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
                            FieldTypes.WORDS),
                    option("name", "Name", "", FieldTypes.WORDS),
                    option("for", "Tonight is for", "", WorkForms.purposes("same as last time")),
                    option("allow", "Or a plain limit", "5 suits visual observing.", Figure.of(Unit.ARCMINUTES))
                            .seldom(),
                    option(
                                    "pressure",
                                    "Air pressure",
                                    "Empty: standard for the altitude.",
                                    Figure.of(Unit.HECTOPASCALS))
                            .seldom(),
                    option("temperature", "Temperature", "10 is usual.", Figure.signed(Unit.CELSIUS))
                            .seldom(),
                    option("at", "When it begins", "With time zone: 2026-11-25T20:00Z. Empty: now.", FieldTypes.WORDS)
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
            List.of(positional("corners", "Corners", "0,8 95,22.5 180,4 270,15", new Several("", "\\s+"))
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
    public static final CommandForm TURN = CommandForm.of(WedgeActions.TURN)
            .withFields(List.of(WedgeActions.AZIMUTH, WedgeActions.ALTITUDE, WedgeActions.INSTEAD_OF));
    public static final CommandForm UNLOGGED_TURN = CommandForm.of(WedgeActions.TURN)
            .named(
                    "unlogged-turn",
                    "Screws were turned but not logged",
                    "You need not know how far. Later sightings will show it.")
            .withFields(List.of(WedgeActions.UNLOGGED_AFTER.required(), WedgeActions.SCREW));
    public static final CommandForm CLAMP = CommandForm.of(WedgeActions.CLAMP);
    public static final CommandForm UNCLAMP = CommandForm.of(WedgeActions.UNCLAMP);
    public static final CommandForm KNOCK = CommandForm.of(WedgeActions.KNOCK);
    public static final CommandForm SKIP = CommandForm.of(SkipAction.SKIP);
    public static final CommandForm NOTE = CommandForm.of(LogActions.NOTE);
    public static final CommandForm UNDO = CommandForm.of(LogActions.UNDO);
    public static final CommandForm RETIME = CommandForm.of(LogActions.RETIME);

    private NightForms() {}

    static List<CommandForm> all() {
        return List.of(BEGIN, HORIZON, OPEN_SKY, TURN, UNLOGGED_TURN, CLAMP, UNCLAMP, KNOCK, SKIP, NOTE, UNDO, RETIME);
    }
}
