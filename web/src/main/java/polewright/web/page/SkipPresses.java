package polewright.web.page;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.mount.rig.Rig;
import polewright.report.text.PoleStarWords;
import polewright.report.text.SkipWords;
import polewright.session.NightState;
import polewright.session.event.Skip;
import polewright.web.form.NightForms;
import polewright.web.view.Section;

/** Reasons why the advised sighting cannot be taken, one button each. */
final class SkipPresses {
    private SkipPresses() {}

    /** Empty if no sighting is advised. */
    static Optional<Section> of(PageRequest request, NightState night) {
        if (!(night.advice() instanceof Advice.TakeSighting take)) {
            return Optional.empty();
        }
        Rig rig = night.situation().rig();
        List<Section.Press> presses = SkipWords.offered(take, rig).stream()
                .map(reason -> new Section.Press(
                        SkipWords.label(reason, take, rig),
                        Forms.fresh(request, NightForms.SKIP, values(reason, take, rig))))
                .toList();
        return presses.isEmpty()
                ? Optional.empty()
                : Optional.of(new Section.Presses("If that is not possible", presses, true));
    }

    /**
     * How to bring the pole star into view, and the button to press if the mount was moved for it; empty while it
     * cannot be seen.
     */
    static List<Section> findPoleStar(PageRequest request, NightState night) {
        List<Section.Step> steps = TaggedLines.steps(PoleStarWords.of(night));
        if (steps.isEmpty()) {
            return List.of();
        }
        return List.of(
                new Section.Words("The pole star is not in view", texts(steps, false)),
                new Section.Caution(texts(steps, true)),
                new Section.Presses(
                        "",
                        List.of(new Section.Press(
                                "I moved the mount by hand", Forms.fresh(request, NightForms.KNOCK, Map.of())))));
    }

    private static List<String> texts(List<Section.Step> steps, boolean isCare) {
        return steps.stream()
                .filter(step -> step.tag().equals("Care") == isCare)
                .map(Section.Step::text)
                .toList();
    }

    /** Everything the page shows, because the advice may be another by the time the button is pressed. */
    private static Map<String, String> values(Skip.Reason reason, Advice.TakeSighting take, Rig rig) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("reason", SkipWords.typed(reason));
        values.put("sighting", SkipWords.typed(Skip.Sighting.of(take.kind())));
        if (reason == Skip.Reason.NO_OPTIC) {
            take.kind().optic(rig).ifPresent(optic -> values.put("optic", optic.name()));
        } else {
            take.star().ifPresent(star -> values.put("star", star.name()));
        }
        return values;
    }
}
