package polewright.app.web.room;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.app.text.PoleStarWords;
import polewright.app.text.SkipWords;
import polewright.app.web.form.NightForms;
import polewright.app.web.view.Section;
import polewright.axis.advice.Advice;
import polewright.axis.rig.Rig;
import polewright.night.NightState;
import polewright.night.event.Skip;

/** Why the advised sighting cannot be taken, one press each. */
final class SkipPresses {
    private SkipPresses() {}

    /** Empty where nothing is to be sighted. */
    static Optional<Section> of(Asked asked, NightState night) {
        if (!(night.advice() instanceof Advice.TakeSighting take)) {
            return Optional.empty();
        }
        Rig rig = night.situation().rig();
        List<Section.Press> presses = SkipWords.offered(take, rig).stream()
                .map(reason -> new Section.Press(
                        SkipWords.label(reason, take, rig),
                        Forms.fresh(asked, NightForms.SKIP, values(reason, take, rig))))
                .toList();
        return presses.isEmpty()
                ? Optional.empty()
                : Optional.of(new Section.Presses("If you cannot do that", presses, true));
    }

    /** To be pressed when the mount was moved to bring the pole star into view; empty while that is not the matter. */
    static Optional<Section> moved(Asked asked, NightState night) {
        return PoleStarWords.of(night).isEmpty()
                ? Optional.empty()
                : Optional.of(new Section.Presses(
                        "If you moved the mount to bring the pole star into view",
                        List.of(new Section.Press(
                                "I moved the mount", Forms.fresh(asked, NightForms.KNOCK, Map.of())))));
    }

    /** All that the page shows: what is advised may be something else by the time that it is pressed. */
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
