package polewright.web.page;

import java.util.List;
import polewright.web.view.Section;

/**
 * Links to the pages that have no entry of their own in the menu.
 *
 * @param links in the order of a night
 */
record MorePage(List<Link> links) implements Page {
    /**
     * A page and what it is for.
     *
     * @param purpose a few words
     */
    record Link(Page page, String purpose) {}

    MorePage {
        links = List.copyOf(links);
    }

    @Override
    public String path() {
        return "/more";
    }

    @Override
    public String name() {
        return "More";
    }

    @Override
    public List<Section> sections(PageRequest request) {
        return List.of(new Section.Ways(
                "",
                links.stream()
                        .map(link -> new Section.Way(
                                link.page().address(request), link.page().name() + ": " + link.purpose(), false))
                        .toList()));
    }
}
