package polewright.web.view;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A whole page.
 *
 * @param title its title
 * @param prefix what its addresses begin with
 * @param stand the number of events in the log
 * @param frame the number of the latest frame status
 * @param here its own address
 * @param isDark deep red on black
 * @param isLive whether it reloads when the log changes; not while entries are being typed
 * @param menu the entries of the menu
 * @param siblings the pages under the current entry of the menu; may be empty
 * @param said what was just done; may be empty
 * @param complaints what was wrong with the submission
 */
public record PageView(
        String title,
        String prefix,
        long stand,
        long frame,
        String here,
        boolean isDark,
        boolean isLive,
        List<Place> menu,
        List<Place> siblings,
        String said,
        List<String> complaints,
        List<Section> sections) {
    public PageView {
        menu = List.copyOf(menu);
        siblings = List.copyOf(siblings);
        complaints = List.copyOf(complaints);
        sections = List.copyOf(sections);
    }

    /** Whether it belongs to a practice, and so to no real telescope. */
    public boolean isPractice() {
        return !prefix.isEmpty();
    }

    /** Where the current page is, seen from a link. */
    public enum Where {
        HERE("page"),
        /** Under what the link leads to. */
        AROUND("true"),
        ELSEWHERE(null);

        private final @Nullable String ariaCurrent;

        Where(@Nullable String ariaCurrent) {
            this.ariaCurrent = ariaCurrent;
        }
    }

    /** A link to a page. */
    public record Place(String address, String name, Where where) {
        /** The link's {@code aria-current}; null if it has none. */
        public @Nullable String ariaCurrent() {
            return where.ariaCurrent;
        }
    }

    /** The name of the current entry of the menu; empty if the page belongs to none. */
    public String entry() {
        return menu.stream()
                .filter(place -> place.where() != Where.ELSEWHERE)
                .map(Place::name)
                .findFirst()
                .orElse("");
    }
}
