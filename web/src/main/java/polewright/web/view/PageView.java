package polewright.web.view;

import java.util.List;

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
 * @param places all pages, in the order of a night
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
        List<Place> places,
        String said,
        List<String> complaints,
        List<Section> sections) {
    public PageView {
        places = List.copyOf(places);
        complaints = List.copyOf(complaints);
        sections = List.copyOf(sections);
    }

    /** Whether it belongs to a practice, and so to no real telescope. */
    public boolean isPractice() {
        return !prefix.isEmpty();
    }

    /** A page in the menu. */
    public record Place(String address, String name, boolean isHere) {}
}
