package polewright.web.page;

import java.util.List;
import polewright.web.view.Section;

/** What a page shows until a night has begun. */
final class NoNightNotice {
    private NoNightNotice() {}

    static List<Section> sections(PageRequest request) {
        return List.of(
                new Section.Words("", List.of("No night has begun here yet.")),
                new Section.Ways("", List.of(new Section.Way(request.to("/begin"), "Begin a night", true))));
    }
}
