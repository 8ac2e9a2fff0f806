package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Worm;

/** What a zone omits because the rig does not specify it, or cannot guarantee because of the rig. */
public final class ZoneNotes {
    private ZoneNotes() {}

    /** One for each, or none. */
    public static List<Remark> of(WorkZone zone, Rig rig) {
        List<Remark> notes = new ArrayList<>();
        boolean isAnyUnguided = zone.work().items().stream()
                .anyMatch(item -> item instanceof ImagingRun shot && shot.guiding() instanceof Guiding.Unguided);
        if (isAnyUnguided && rig.drive().worm().equals(Worm.NOT_COUNTED)) {
            notes.add(Remark.note("The rig gives no periodic error, so it is not counted: unguided stars may"
                    + " trail by that much more. Measure it and enter it in the rig file under drive"
                    + " (docs/events.md)."));
        }
        if (zone.depth().compareTo(rig.clampingSigma()) < 0) {
            notes.add(Remark.note("Tightening the clamps may move the axis by " + AngleWords.size(rig.clampingSigma())
                    + ", more than the radius of the zone. Clamping alone may move it out."));
        }
        return notes;
    }
}
