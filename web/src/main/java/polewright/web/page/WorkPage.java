package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import polewright.alignment.allowance.ItemTolerance;
import polewright.drawing.zone.ZoneDrawing;
import polewright.report.scene.NightScene;
import polewright.report.text.ZoneWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.web.form.WorkForms;
import polewright.web.view.Section;

/** What tonight is for, and how far off the axis may be for it. */
final class WorkPage implements Page {
    @Override
    public String path() {
        return "/work";
    }

    @Override
    public String name() {
        return "Work";
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
        List<Section.Step> lines = TaggedLines.lines(ZoneWords.full(night, tolerances(night)));
        sections.add(new Section.Items("", List.of(new Section.Item("", lines))));
        sections.add(new Section.Drawing("", ZoneDrawing.svg(NightScene.of(night), request.palette())));
        night.work()
                .filter(work -> work.items().size() > 1)
                .ifPresent(work -> sections.add(new Section.Presses(
                        "Remove from tonight's work",
                        work.items().stream()
                                .map(item -> new Section.Press(
                                        item.name(),
                                        Forms.fresh(request, WorkForms.ALLOW_DROP, Map.of("name", item.name()))))
                                .toList())));
        sections.add(new Section.Ways(
                "Work of your own",
                Stream.of(WorkForms.ALLOW_LOOK, WorkForms.ALLOW_SHOT)
                        .map(form -> new Section.Way(request.to(Pages.path(form)), form.title(), false))
                        .toList()));
        Stream.of(WorkForms.ALLOW_FOR, WorkForms.ALLOW_ALSO, WorkForms.ALLOW_LIMIT, WorkForms.TARGET)
                .forEach(form -> sections.add(new Section.Entry(Forms.fresh(request, form, Map.of()))));
        return sections;
    }

    private static List<ItemTolerance> tolerances(NightState night) {
        NightEvent.Begun begun = night.begun();
        return night.work()
                .map(work -> ItemTolerance.each(begun.site(), begun.weather(), begun.rig(), work))
                .orElse(List.of());
    }
}
