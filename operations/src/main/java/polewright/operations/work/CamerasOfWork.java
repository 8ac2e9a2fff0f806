package polewright.operations.work;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;

/** The cameras typed for work: a rig that lists none is assumed to have them. */
final class CamerasOfWork {
    private CamerasOfWork() {}

    /** The rig, with the cameras of this work's imaging runs if it has none of its own; the last one of each name. */
    static Rig in(Rig rig, List<WorkItem> work) {
        if (!rig.cameras().isEmpty()) {
            return rig;
        }
        Map<String, Camera> cameras = new LinkedHashMap<>();
        for (WorkItem item : work) {
            if (item instanceof ImagingRun shot
                    && rig.optic(shot.camera().name()).isEmpty()) {
                cameras.put(shot.camera().name().toLowerCase(Locale.ROOT), shot.camera());
            }
        }
        return rig.withCameras(new ArrayList<>(cameras.values()));
    }
}
