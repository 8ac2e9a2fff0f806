package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.operations.seasons.LoggedNights;
import polewright.planning.seasons.Pier;
import polewright.planning.seasons.Seasons;
import polewright.report.scene.SeasonsScene;
import polewright.report.text.SeasonsWords;
import polewright.session.NightSummary;
import polewright.session.StandingEvents;
import polewright.session.event.NightEvent;
import polewright.web.view.Section;

/** How pier and wedge move from night to night. */
final class SeasonsPage implements Page {
    static final String PATH = "/nights/seasons";

    @Override
    public String path() {
        return PATH;
    }

    @Override
    public String name() {
        return "Seasons";
    }

    @Override
    public String menuPath() {
        return NightPage.PATH;
    }

    @Override
    public List<Section> sections(PageRequest request) {
        Optional<NightSummary> night = ChosenNight.of(request);
        List<Section> sections = new ArrayList<>();
        if (night.isPresent()) {
            sections.addAll(of(request, night.get()));
        } else {
            sections.add(new Section.Words("", List.of("No night has begun yet.")));
        }
        sections.add(new Section.Ways("", List.of(new Section.Way(request.to(NightPage.PATH), "All nights", false))));
        return sections;
    }

    private static List<Section> of(PageRequest request, NightSummary night) {
        Optional<NightEvent.Begun> begun =
                StandingEvents.beginning(request.session().events(night.id()));
        if (begun.isEmpty()) {
            return List.of(new Section.Words("", List.of("This night has no beginning. Choose another.")));
        }
        Pier pier = Pier.of(begun.get());
        LoggedNights nights = request.session().nightsAt(pier);
        Seasons seasons = Seasons.of(pier, nights.records());
        List<Section> sections = new ArrayList<>();
        if (seasons instanceof Seasons.Compared compared) {
            sections.add(new Section.Drawing("", SeasonsScene.svg(compared, request.palette())));
        }
        List<String> conclusions = new ArrayList<>(SeasonsWords.conclusions(seasons));
        conclusions.addAll(SeasonsWords.leftOut(nights));
        sections.add(new Section.Words("", conclusions));
        sections.add(new Section.Words("Night by night", SeasonsWords.nights(seasons)));
        return sections;
    }
}
