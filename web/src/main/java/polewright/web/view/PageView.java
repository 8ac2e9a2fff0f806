package polewright.web.view;

import java.util.List;

/**
 * A whole page.
 *
 * @param title what it is called
 * @param prefix what addresses begin with
 * @param stand how many events the log held
 * @param frame the number of what was last new with the frames
 * @param here its own address
 * @param isDark deep red on black
 * @param isLive whether it is asked for again whenever the log has changed: not while something is being typed
 * @param places all pages, in the order of a night
 * @param said what was just done; may be empty
 * @param complaints what was wrong with what was sent
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

    /** Whether it belongs to a practice, and so to no telescope. */
    public boolean isPractice() {
        return !prefix.isEmpty();
    }

    /** A page in the list of pages. */
    public record Place(String address, String name, boolean isHere) {}
}
