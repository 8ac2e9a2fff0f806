package polewright.web.page;

import java.util.List;

/**
 * An entry of the menu, which leads to the first of its pages.
 *
 * @param name one word
 * @param pages at least one; those after the first are one step further
 */
public record MenuEntry(String name, List<Page> pages) {
    public MenuEntry {
        pages = List.copyOf(pages);
    }

    public Page first() {
        return pages.get(0);
    }

    /** Whether this page is one of the entry's, or belongs under one of them. */
    public boolean holds(Page page) {
        return pages.stream().anyMatch(each -> each.path().equals(page.menuPath()));
    }
}
