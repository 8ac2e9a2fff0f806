package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.drawing.strip.ResidualDrawing;
import polewright.mount.pointing.PointingModel;
import polewright.mount.pointing.PointingOutcome;
import polewright.mount.reach.PointingLimits;
import polewright.report.text.PointingWords;
import polewright.session.NightPointing;
import polewright.session.NightState;
import polewright.web.form.SightingForms;
import polewright.web.view.Section;

/** The centred stars, and what they show about the mount. */
final class PointingPage implements Page {
    @Override
    public String path() {
        return "/pointing";
    }

    @Override
    public String name() {
        return "Pointing";
    }

    @Override
    public List<Section> sections(PageRequest request) {
        return request.session()
                .tonight()
                .map(tonight -> of(request, tonight.state()))
                .orElseGet(() -> NoNightNotice.sections(request));
    }

    private static List<Section> of(PageRequest request, NightState night) {
        NightPointing pointing = NightPointing.of(night);
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Words(
                "",
                PointingWords.standing(
                        night, pointing, request.session().workbench().now())));
        if (pointing.outcome() instanceof PointingOutcome.Fitted fitted) {
            sections.addAll(fitted(request, night, pointing, fitted.model()));
        }
        sections.add(new Section.Entry(Forms.fresh(request, SightingForms.CENTRE, Map.of())));
        return sections;
    }

    private static List<Section> fitted(
            PageRequest request, NightState night, NightPointing pointing, PointingModel model) {
        PointingLimits reach =
                PointingLimits.of(night.begun().site(), night.begun().rig(), night.horizon());
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Drawing("", ResidualDrawing.svg(model, reach, request.palette())));
        sections.add(new Section.Table(
                PointingWords.ERRORS,
                List.of("", "Size", "Uncertainty"),
                PointingWords.errors(model).stream()
                        .map(error -> List.of(error.term(), error.value(), error.sigma()))
                        .toList()));
        sections.add(new Section.Words("", PointingWords.notDetermined(pointing, model)));
        sections.add(new Section.Table(
                PointingWords.LEFT,
                List.of("Star", "Left", "If left out"),
                PointingWords.left(pointing, model).stream()
                        .map(star -> List.of(star.star(), star.left(), star.without()))
                        .toList()));
        return sections;
    }
}
