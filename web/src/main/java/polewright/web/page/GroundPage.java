package polewright.web.page;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.advice.SightingKind;
import polewright.drawing.Palette;
import polewright.drawing.mount.HomeDrawing;
import polewright.mount.rig.HomePosition;
import polewright.mount.rig.MountKind;
import polewright.report.text.AngleWords;
import polewright.report.text.GroundWords;
import polewright.session.GroundPlan;
import polewright.session.NightState;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;
import polewright.web.form.SightingForms;
import polewright.web.view.Section;

/**
 * What to set before dark: tripod to north, level, wedge to the latitude, home position; then the readings of compass
 * and level.
 */
final class GroundPage implements Page {
    private static final String CARE = "CARE";

    @Override
    public String path() {
        return "/ground";
    }

    @Override
    public String name() {
        return "Ground";
    }

    @Override
    public List<Section> sections(PageRequest request) {
        Optional<NightState> night = request.session().tonight().map(tonight -> tonight.state());
        return night.map(known -> of(request, known)).orElseGet(() -> NoNightNotice.sections(request));
    }

    private static List<Section> of(PageRequest request, NightState night) {
        Site site = night.begun().site();
        MountKind mount = night.begun().rig().kind();
        List<Section> sections = new ArrayList<>(request.session()
                .eachMinute(new From(request.palette(), site, mount), () -> sections(request, site, mount)));
        Stream.of(SightingKind.COMPASS, SightingKind.LEVEL_AND_SCALE)
                .flatMap(kind -> SightingForms.of(kind).stream())
                .forEach(form -> sections.add(new Section.Entry(Forms.fresh(request, form, Map.of()))));
        return sections;
    }

    /** What the page depends on, except the time. */
    private record From(Palette palette, Site site, MountKind mount) {}

    private static List<Section> sections(PageRequest request, Site site, MountKind mount) {
        Instant now = request.session().workbench().now();
        GroundPlan plan =
                GroundPlan.of(ObservingMoment.of(site, SkyTime.of(now), Weather.standardAt(site.heightMetres())));
        List<Section> sections = new ArrayList<>();
        List<GroundWords.Part> parts = GroundWords.parts(plan, mount);
        List<String> cautions = parts.stream()
                .filter(part -> part.tag().equals(CARE))
                .flatMap(part -> part.lines().stream())
                .toList();
        if (!cautions.isEmpty()) {
            sections.add(new Section.Caution(cautions));
        }
        sections.add(new Section.Items(
                AngleWords.site(site),
                parts.stream()
                        .filter(part -> !part.tag().equals(CARE))
                        .map(GroundPage::item)
                        .toList()));
        sections.add(new Section.Drawing("Home position", HomeDrawing.svg(mount, site, request.palette())));
        sections.add(new Section.Items("Step by step, for a " + mount.words(), home(HomePosition.of(mount, site))));
        return sections;
    }

    private static Section.Item item(GroundWords.Part part) {
        return new Section.Item(
                TaggedLines.word(part.tag()),
                part.lines().stream()
                        .map(TaggedLines::capitalised)
                        .map(line -> new Section.Step("", line))
                        .toList());
    }

    /** Step by step, with cautions ahead of the actions. */
    private static List<Section.Item> home(HomePosition home) {
        List<Section.Item> items = new ArrayList<>();
        for (HomePosition.Step step : home.steps()) {
            List<Section.Step> lines = new ArrayList<>();
            step.cautions()
                    .forEach(caution ->
                            lines.add(new Section.Step(TaggedLines.word(CARE), TaggedLines.capitalised(caution))));
            step.remarks().forEach(remark -> lines.add(new Section.Step("", TaggedLines.capitalised(remark))));
            items.add(new Section.Item((items.size() + 1) + ". " + step.instruction(), lines));
        }
        return items;
    }
}
