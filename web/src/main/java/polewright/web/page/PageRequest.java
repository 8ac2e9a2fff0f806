package polewright.web.page;

import java.util.Map;
import java.util.Optional;
import polewright.drawing.Palette;
import polewright.web.session.NightSession;

/**
 * What a browser asks a page for.
 *
 * @param palette how it wants its pictures
 * @param words what stands in the address behind the question mark
 * @param stand how many events the log held when it was asked: counted before the page is made, so that what comes in
 *     meanwhile makes it old, never too new
 * @param frame the number of what was last new with the frames, counted likewise
 * @param night the number of tonight's night by then; 0 if there is none
 */
public record PageRequest(
        NightSession desk, Palette palette, Map<String, String> words, long stand, long frame, long night) {
    public PageRequest {
        words = Map.copyOf(words);
    }

    public Optional<String> word(String name) {
        return Optional.ofNullable(words.get(name)).filter(word -> !word.isBlank());
    }

    /** An address of this desk. */
    public String to(String path) {
        return desk.prefix() + path;
    }
}
