package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import polewright.drawing.zone.ZoneDrawing;
import polewright.report.scene.NightScene;
import polewright.report.text.FixWords;
import polewright.report.text.ZoneWords;
import polewright.session.NightState;
import polewright.web.view.Section;

/** Shows where the axis points: the zone, the fix in it, how the fix developed, and what contradicts it. */
final class FixPage implements Page {
    @Override
    public String path() {
        return "/fix";
    }

    @Override
    public String name() {
        return "Fix";
    }

    @Override
    public boolean isLive() {
        return true;
    }

    @Override
    public List<Section> sections(PageRequest request) {
        return request.session()
                .tonight()
                .map(tonight -> of(request, tonight.state()))
                .orElseGet(() -> NoNightNotice.sections(request));
    }

    private static List<Section> of(PageRequest request, NightState night) {
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Drawing("", ZoneDrawing.svg(NightScene.of(night), request.palette())));
        sections.add(new Section.Words(
                "",
                TaggedLines.lines(FixWords.full(night)).stream()
                        .map(Section.Step::text)
                        .toList()));
        MistakePresses.of(request, night).ifPresent(sections::add);
        sections.add(new Section.Steps(TaggedLines.lines(List.of(ZoneWords.chance(night)))));
        return sections;
    }
}
