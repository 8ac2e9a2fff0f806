package polewright.web.form;

import java.util.List;
import java.util.stream.Stream;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.Unit;
import polewright.operations.night.TargetAction;
import polewright.operations.work.CameraArguments;
import polewright.operations.work.LookAction;
import polewright.operations.work.ShotAction;
import polewright.operations.work.WorkActions;

/** Forms for tonight's work, which sets how far off the pole the axis may be. */
public final class WorkForms {
    public static final CommandForm ALLOW_FOR = CommandForm.of(WorkActions.ALLOW)
            .named("allow-for", "What tonight is for", "The tolerance of the polar axis follows from it.")
            .withFields(withCamera(WorkActions.FOR.required()));
    public static final CommandForm ALLOW_ALSO = CommandForm.of(WorkActions.ALLOW)
            .named("allow-also", "Also for", "Added to tonight's work.")
            .withFields(withCamera(WorkActions.ALSO.required()));
    public static final CommandForm ALLOW_LIMIT = CommandForm.of(WorkActions.ALLOW)
            .named("allow-limit", "A plain limit instead", "Whatever the work.")
            .withFields(List.of(WorkActions.LIMIT.as(Figure.of(Unit.ARCMINUTES)).required()));
    public static final CommandForm ALLOW_LOOK = CommandForm.of(LookAction.LOOK);
    public static final CommandForm ALLOW_SHOT = CommandForm.of(ShotAction.SHOT);
    public static final CommandForm ALLOW_DROP = CommandForm.of(WorkActions.DROP);
    public static final CommandForm TARGET = CommandForm.of(TargetAction.TARGET);

    private WorkForms() {}

    static List<CommandForm> all() {
        return List.of(ALLOW_FOR, ALLOW_ALSO, ALLOW_LIMIT, ALLOW_LOOK, ALLOW_SHOT, ALLOW_DROP, TARGET);
    }

    private static List<Argument<?>> withCamera(Argument<?> purpose) {
        return Stream.<Argument<?>>concat(Stream.of(purpose), CameraArguments.ALL.stream())
                .toList();
    }
}
