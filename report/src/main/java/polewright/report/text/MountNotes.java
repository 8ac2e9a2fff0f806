package polewright.report.text;

import java.util.List;
import polewright.session.NightState;
import polewright.session.event.NightEvent;

/** Cautions for actions at the mount. */
public final class MountNotes {
    private MountNotes() {}

    /** One line, or none. */
    public static List<Remark> of(NightEvent event, NightState before) {
        if (event instanceof NightEvent.ScrewsTurned && before.clamped()) {
            return List.of(Remark.note("The clamps were tight; they are assumed to have been loosened first."));
        }
        if (event instanceof NightEvent.Unclamped || event instanceof NightEvent.Knocked) {
            String care = before.begun().rig().kind().weightCaution();
            return List.of(Remark.caution(Character.toUpperCase(care.charAt(0)) + care.substring(1) + "."));
        }
        return List.of();
    }
}
