package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.NightForms;
import polewright.web.form.SightingForms;
import polewright.web.session.FrameAddress;
import polewright.web.view.Section;

/** Everything that can be entered at the wedge. */
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
    public List<Section> sections(PageRequest request) {
        return request.session().tonight().isPresent() ? ways(request) : NoNightNotice.sections(request);
    }

    private static List<Section> ways(PageRequest request) {
        return List.of(
                new Section.Ways("What did you see?", seen(request)),
                new Section.Ways(
                        "What did you do?",
                        ways(
                                request,
                                List.of(
                                        NightForms.TURN,
                                        NightForms.CLAMP,
                                        NightForms.UNCLAMP,
                                        NightForms.KNOCK,
                                        NightForms.NOTE))));
    }

    /** The sightings that are typed in, followed by those with a page of their own. */
    private static List<Section.Way> seen(PageRequest request) {
        List<Section.Way> seen = new ArrayList<>(ways(request, CommandForms.sightings()));
        seen.add(new Section.Way(request.to(FrameAddress.PAGE), "Take camera frames", false));
        seen.addAll(ways(request, List.of(SightingForms.CENTRE)));
        return seen;
    }

    private static List<Section.Way> ways(PageRequest request, List<CommandForm> forms) {
        return forms.stream()
                .map(form -> new Section.Way(request.to("/sightings/" + form.id()), form.title(), false))
                .toList();
    }
}
