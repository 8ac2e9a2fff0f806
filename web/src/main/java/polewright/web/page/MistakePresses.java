package polewright.web.page;

import java.util.List;
import java.util.Optional;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.session.NightState;
import polewright.web.form.MistakeCorrection;
import polewright.web.view.Section;

/** Suspected entry mistakes, with one button each to correct them. */
final class MistakePresses {
    private static final int MOST = 3;
    private static final double WORTH_OFFERING = 0.05;

    private MistakePresses() {}

    /** Empty while no suspected mistake can be corrected by a button. */
    static Optional<Section> of(PageRequest request, NightState night) {
        if (!(night.fix() instanceof Fix.Dubious)) {
            return Optional.empty();
        }
        List<Section.Press> presses = night.fix().explanations().stream()
                .filter(explanation -> explanation.weight() > WORTH_OFFERING)
                .map(Explanation::mistake)
                .flatMap(Optional::stream)
                .flatMap(mistake -> MistakeCorrection.of(mistake, night).stream())
                .limit(MOST)
                .map(correction -> new Section.Press(
                        correction.words(), Forms.fresh(request, correction.form(), correction.values())))
                .toList();
        return presses.isEmpty()
                ? Optional.empty()
                : Optional.of(new Section.Presses("Correct it, if you know which one it was", presses));
    }
}
