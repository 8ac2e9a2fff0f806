package polewright.web.session;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import polewright.drawing.frame.CloseUp;

/** The addresses of a session's frames, and the query that names a part of one. */
public final class FrameAddress {
    /** The page. */
    public static final String PAGE = "/frames";

    /**
     * The image of the newest frame, or a part of it; {@code n}, its number, only distinguishes one frame from
     * another in caches.
     */
    public static final String LIGHT = "/frames/newest.png";

    /** Where a frame is uploaded. */
    public static final String UPLOAD = "/frames/upload";

    /** Where the person confirms that the screws are where they should be. */
    public static final String SETTLED = "/frames/settled";

    private static final String TIMES = "times";
    private static final String ACROSS = "x";
    private static final String DOWN = "y";
    private static final int THOUSANDTHS = 1000;

    private FrameAddress() {}

    /**
     * The part that an address names.
     *
     * @param words the query parameters: {@code times}, {@code x} and {@code y} in thousandths, or none of them for
     *     the whole frame
     * @return empty when they make no sense
     */
    public static Optional<CloseUp> part(Map<String, String> words) {
        if (!words.containsKey(TIMES) && !words.containsKey(ACROSS) && !words.containsKey(DOWN)) {
            return Optional.of(CloseUp.WHOLE);
        }
        String times = words.getOrDefault(TIMES, "");
        String across = words.getOrDefault(ACROSS, "");
        String down = words.getOrDefault(DOWN, "");
        if (!times.matches("\\d{1,3}") || !across.matches("\\d{1,4}") || !down.matches("\\d{1,4}")) {
            return Optional.empty();
        }
        return Optional.of(new CloseUp(Integer.parseInt(times), share(across), share(down)));
    }

    /** The query that names a part, with the question mark; empty for the whole frame. */
    public static String query(CloseUp part) {
        return part.isWhole()
                ? ""
                : String.format(
                        Locale.ROOT,
                        "?%s=%d&%s=%d&%s=%d",
                        TIMES,
                        part.times(),
                        ACROSS,
                        Math.round(part.x() * THOUSANDTHS),
                        DOWN,
                        Math.round(part.y() * THOUSANDTHS));
    }

    private static double share(String thousandths) {
        return Integer.parseInt(thousandths) / (double) THOUSANDTHS;
    }
}
