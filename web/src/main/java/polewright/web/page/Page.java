package polewright.web.page;

import java.util.List;
import polewright.web.view.Section;

/** A page. */
public interface Page {
    /** Its address within a desk, with a slash before. */
    String path();

    /** Its whole address, for whoever is at this desk. */
    default String address(PageRequest asked) {
        return asked.to(path());
    }

    /** What it is called, one or two words. */
    String name();

    /** Whether it shows the log as it changes; one in which something is typed does not. */
    default boolean isLive() {
        return false;
    }

    /** From top to bottom. */
    List<Section> sections(PageRequest asked);
}
