package polewright.bench.independent;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The words by which a reported cause is recognised as a mistake: the one place that depends on how causes are
 * worded.
 */
final class CauseWords {
    private CauseWords() {}

    /**
     * Whether a text names the mistake.
     *
     * @param watchedInstead the star that was watched by mistake
     */
    static boolean name(Mistake mistake, String text, Optional<String> watchedInstead) {
        String words = text.toLowerCase(Locale.ROOT);
        boolean isStarNamed = watchedInstead
                .filter(star -> words.contains(star.toLowerCase(Locale.ROOT)))
                .isPresent();
        return switch (mistake) {
            case DRIFT_SIGN -> has(words, "north and south");
            case WRONG_STAR, OTHER_SIDE -> isStarNamed;
            case REVERSED_TURN -> has(words, "(other|opposite) way|reversed|wrong way");
            case UNLOGGED_TURN ->
                has(words, "not logged|unlogged|not entered|without being (logged|entered)|more was turned");
            case OTHER_SCREW -> has(words, "other screw|wrong screw|screws (were )?(swapped|exchanged)");
            case VIEW -> has(words, "view.*(inverted|erect)");
            case COMPASS_END -> has(words, "wrong end|other end");
            case DECLINATION_SIGN -> has(words, "declination");
            case CLOCK_HOURS -> has(words, "clock|hours? (off|ahead|behind)|time zone");
            case DATE -> has(words, "date|\\bday");
            case LATITUDE_SIGN -> has(words, "of the equator");
            case LONGITUDE_SIGN -> has(words, "of greenwich");
            case SWAPPED -> has(words, "latitude and longitude|longitude and latitude");
        };
    }

    private static boolean has(String words, String pattern) {
        return Pattern.compile(pattern).matcher(words).find();
    }
}
