package polewright.web.form;

import java.util.List;
import polewright.operations.night.LogActions;
import polewright.operations.night.SkipAction;
import polewright.operations.night.WedgeActions;

/** Forms that log what is done at the wedge, and add notes. */
public final class NightForms {
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
        return List.of(TURN, UNLOGGED_TURN, CLAMP, UNCLAMP, KNOCK, SKIP, NOTE, UNDO, RETIME);
    }
}
