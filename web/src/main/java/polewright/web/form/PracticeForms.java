package polewright.web.form;

import java.util.List;
import polewright.operations.practice.PracticeActions;

/** Forms for the actions of a practice. */
public final class PracticeForms {
    public static final CommandForm BEGIN = CommandForm.of(PracticeActions.BEGIN);
    public static final CommandForm SCREW = CommandForm.of(PracticeActions.SCREW_TURNED);
    public static final CommandForm CLAMP = CommandForm.of(PracticeActions.CLAMP);
    public static final CommandForm UNCLAMP = CommandForm.of(PracticeActions.UNCLAMP);
    public static final CommandForm MOVE = CommandForm.of(PracticeActions.MOVE);
    public static final CommandForm COMPASS = CommandForm.of(PracticeActions.COMPASS);
    public static final CommandForm SCALE = CommandForm.of(PracticeActions.SCALE);
    public static final CommandForm ROCKING = CommandForm.of(PracticeActions.ROCKING);
    public static final CommandForm DRIFT = CommandForm.of(PracticeActions.DRIFT);
    public static final CommandForm FRAME = CommandForm.of(PracticeActions.FRAME);
    public static final CommandForm WAIT = CommandForm.of(PracticeActions.WAIT);

    private PracticeForms() {}

    static List<CommandForm> all() {
        return PracticeActions.all().stream().map(CommandForm::of).toList();
    }
}
