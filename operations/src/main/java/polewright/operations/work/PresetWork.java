package polewright.operations.work;

import java.util.List;
import java.util.Optional;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Rig;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** A preset as the work of a night that begins. */
public final class PresetWork {
    private PresetWork() {}

    /**
     * The work.
     *
     * @param lastNight whose cameras are used if the rig has none
     * @throws InputRefused if it needs a camera and none is known
     * @throws ImpossibleWork if no axis suits it
     */
    public static Work of(WorkPreset preset, NightEvent.Begun begun, Optional<Work> lastNight) {
        Rig rig = CamerasOfWork.in(begun.rig(), lastNight.map(Work::items).orElse(List.of()));
        if (preset.isShot() && rig.cameras().isEmpty()) {
            throw new InputRefused(
                    preset.words() + " need a camera, and the rig has none",
                    "begin without {for}, then give the work and its camera with {do:allow}");
        }
        Work work = new Work(List.of(preset.with(rig)));
        TonightsWork.set(begun, work);
        return work;
    }
}
