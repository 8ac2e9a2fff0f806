package polewright.operations.work;

import java.util.List;
import java.util.Optional;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Rig;
import polewright.operations.action.Entries;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** A preset as the work of a night that begins. */
public final class PresetWork {
    private PresetWork() {}

    /**
     * The work.
     *
     * @param entries may give the camera
     * @param lastNight whose cameras are used if neither entries nor rig have one
     * @throws InputRefused if it needs a camera and none is known
     * @throws ImpossibleWork if no axis suits it
     */
    public static Work of(WorkPreset preset, Entries entries, NightEvent.Begun begun, Optional<Work> lastNight) {
        List<WorkItem> before = lastNight.map(Work::items).orElse(List.of());
        Work work = new Work(List.of(item(preset, entries, begun.rig(), before)));
        TonightsWork.require(begun, work);
        return work;
    }

    /**
     * The preset with the camera that was given, or with the rig's.
     *
     * @param before the work so far, whose cameras are used if neither entries nor rig have one
     */
    static WorkItem item(WorkPreset preset, Entries entries, Rig rig, List<WorkItem> before) {
        if (CameraArguments.areGiven(entries)) {
            return preset.with(CameraArguments.camera(entries, rig, before));
        }
        Rig equipped = CamerasOfWork.in(rig, before);
        if (preset.isShot() && equipped.cameras().isEmpty()) {
            throw new InputRefused(
                    preset.words() + " need a camera, and the rig has none",
                    "give {focal-length} and {pixel}, or add the camera to the rig file");
        }
        return preset.with(equipped);
    }
}
