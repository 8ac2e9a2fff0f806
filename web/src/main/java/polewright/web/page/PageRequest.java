package polewright.web.page;

import java.util.Map;
import java.util.Optional;
import polewright.drawing.Palette;
import polewright.web.session.NightSession;

/**
 * A browser's request for a page.
 *
 * @param palette the colours of its pictures
 * @param words the query parameters
 * @param eventCount the number of events in the log, counted before the page is rendered, so that an event logged
 *     meanwhile makes the page old and never too new
 * @param frame the number of the latest frame status, counted in the same way
 * @param night the number of tonight's night at that time; 0 if there is none
 */
public record PageRequest(
        NightSession session, Palette palette, Map<String, String> words, long eventCount, long frame, long night) {
    public PageRequest {
        words = Map.copyOf(words);
    }

    public Optional<String> word(String name) {
        return Optional.ofNullable(words.get(name)).filter(word -> !word.isBlank());
    }

    /** An address within this session. */
    public String to(String path) {
        return session.prefix() + path;
    }
}
