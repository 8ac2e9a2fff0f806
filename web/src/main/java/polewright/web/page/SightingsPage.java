package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.NightForms;
import polewright.web.form.SightingForms;
import polewright.web.session.FrameAddress;
import polewright.web.view.Section;

/** All that can be entered at the wedge. */
final class SightingsPage implements Page {
    @Override
    public String path() {
        return "/sightings";
    }

    @Override
    public String name() {
        return "Sightings";
    }

    @Override
    public List<Section> sections(PageRequest asked) {
        return asked.desk().tonight().isPresent() ? ways(asked) : NoNightNotice.sections(asked);
    }

    private static List<Section> ways(PageRequest asked) {
        return List.of(
                new Section.Ways("What did you see?", seen(asked)),
                new Section.Ways(
                        "What did you do?",
                        ways(
                                asked,
                                List.of(
                                        NightForms.TURN,
                                        NightForms.CLAMP,
                                        NightForms.UNCLAMP,
                                        NightForms.KNOCK,
                                        NightForms.NOTE))));
    }

    /** What is typed, and after it what has a page of its own. */
    private static List<Section.Way> seen(PageRequest asked) {
        List<Section.Way> seen = new ArrayList<>(ways(asked, CommandForms.sightings()));
        seen.add(new Section.Way(asked.to(FrameAddress.PAGE), "Take camera frames", false));
        seen.addAll(ways(asked, List.of(SightingForms.CENTRE)));
        return seen;
    }

    private static List<Section.Way> ways(PageRequest asked, List<CommandForm> forms) {
        return forms.stream()
                .map(form -> new Section.Way(asked.to("/sightings/" + form.id()), form.title(), false))
                .toList();
    }
}
