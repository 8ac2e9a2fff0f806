package polewright.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Rig;
import polewright.operations.input.PresetInput;
import polewright.report.text.WorkWords;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** The work of a night that begins: what was typed, otherwise that of the last night. */
final class BeginningWork {
    @Option(
            names = "--for",
            paramLabel = "WORK",
            arity = "1..*",
            parameterConsumer = FreeTextWords.class,
            description =
                    "What tonight is for: a casual look, a look by hand, planets at high power, short subs, or long"
                            + " guided subs."
                            + " Default: as last night.")
    private @Nullable List<String> purpose;

    /**
     * The work carried over from the last night.
     *
     * @param work to log after the beginning, if any
     * @param words for the user, a phrase and notes
     */
    record Taken(Optional<Work> work, String words, List<String> notes) {}

    /**
     * Determined before anything is logged.
     *
     * @param isLimited whether a plain limit was typed, which applies whatever the work
     */
    Taken taken(NightEvent.Begun begun, Optional<Work> lastNight, boolean isLimited) {
        if (purpose != null) {
            if (isLimited) {
                throw new WrongUsage("--allow does not depend on the work. Give --allow or --for, not both.");
            }
            List<String> words = purpose;
            Work typed = WrongUsage.unlessUsable(() -> {
                Rig rig =
                        CamerasOfWork.in(begun.rig(), lastNight.map(Work::items).orElse(List.of()));
                Work work = new Work(List.of(item(PresetInput.of(words), rig)));
                TonightsWork.zone(begun, work);
                return work;
            });
            return new Taken(Optional.of(typed), "for " + WorkWords.names(typed.items()), List.of());
        }
        if (isLimited || lastNight.isEmpty()) {
            return new Taken(Optional.empty(), "allowed " + begun.allowance().words(), List.of());
        }
        Work work = lastNight.get();
        try {
            TonightsWork.zone(begun, work);
        } catch (InputRefused here) {
            return new Taken(
                    Optional.empty(),
                    "allowed " + begun.allowance().words(),
                    List.of("NOTE  The last night's work is not carried over: " + here.getMessage()));
        }
        return new Taken(lastNight, "for " + WorkWords.names(work.items()) + " as last time", List.of());
    }

    private static WorkItem item(WorkPreset preset, Rig rig) {
        if (preset.isShot() && rig.cameras().isEmpty()) {
            throw new InputRefused(
                    preset.words() + " need a camera, and the rig has none",
                    "begin without --for, then: polewright allow --for " + preset.words()
                            + " --focal-length MM --pixel MICRONS");
        }
        return preset.with(rig);
    }
}
