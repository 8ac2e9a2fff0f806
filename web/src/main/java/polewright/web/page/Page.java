package polewright.web.page;

import java.util.List;
import polewright.web.view.Section;

/** A page. */
public interface Page {
    /** Its address within a session, with a leading slash. */
    String path();

    /** Its full address in this session. */
    default String address(PageRequest request) {
        return request.to(path());
    }

    /** Its name, one or two words. */
    String name();

    /** The path of the page in the menu under which it belongs; its own if it is there itself. */
    default String menuPath() {
        return path();
    }

    /** Whether it follows the log as it changes; a page with entries being typed does not. */
    default boolean isLive() {
        return false;
    }

    /** From top to bottom. */
    List<Section> sections(PageRequest request);
}
