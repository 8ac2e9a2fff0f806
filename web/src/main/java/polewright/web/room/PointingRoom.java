package polewright.web.room;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.drawing.ResidualDrawing;
import polewright.mount.pointing.PointingModel;
import polewright.mount.pointing.PointingOutcome;
import polewright.mount.reach.Reach;
import polewright.report.text.PointingWords;
import polewright.session.NightPointing;
import polewright.session.NightState;
import polewright.web.form.SightingForms;
import polewright.web.view.Section;

/** The stars that were centred, and what they tell of the mount. */
final class PointingRoom implements Room {
    @Override
    public String path() {
        return "/pointing";
    }

    @Override
    public String name() {
        return "Pointing";
    }

    @Override
    public List<Section> sections(Asked asked) {
        return asked.desk()
                .tonight()
                .map(tonight -> of(asked, tonight.state()))
                .orElseGet(() -> NoNight.sections(asked));
    }

    private static List<Section> of(Asked asked, NightState night) {
        NightPointing pointing = NightPointing.of(night);
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Words(
                "",
                PointingWords.standing(night, pointing, asked.desk().workbench().now())));
        if (pointing.outcome() instanceof PointingOutcome.Fitted fitted) {
            sections.addAll(fitted(asked, night, pointing, fitted.model()));
        }
        sections.add(new Section.Entry(Forms.fresh(asked, SightingForms.CENTRE, Map.of())));
        return sections;
    }

    private static List<Section> fitted(Asked asked, NightState night, NightPointing pointing, PointingModel model) {
        Reach reach = Reach.of(night.begun().site(), night.begun().rig(), night.horizon());
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Drawing("", ResidualDrawing.svg(model, reach, asked.palette())));
        sections.add(new Section.Table(
                PointingWords.ERRORS,
                List.of("", "Size", "Give or take"),
                PointingWords.errors(model).stream()
                        .map(error -> List.of(error.term(), error.value(), error.sigma()))
                        .toList()));
        sections.add(new Section.Words("", PointingWords.untold(pointing, model)));
        sections.add(new Section.Table(
                PointingWords.LEFT,
                List.of("Star", "Left", "Without it"),
                PointingWords.left(pointing, model).stream()
                        .map(star -> List.of(star.star(), star.left(), star.without()))
                        .toList()));
        return sections;
    }
}
