package polewright.sky.atlas;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A star's letter or number in a constellation: {@code alp Lyr}, {@code gam1 And}, {@code 61 Cyg}, {@code q Car},
 * {@code V645 Cen}.
 *
 * @param mark Greek letter abbreviated in small letters, Flamsteed number, Latin letter or variable-star letters
 * @param index 0 for none, else the superscript that distinguishes components or neighbours with the same letter
 * @param constellation the one in the designation
 */
public record StarDesignation(String mark, int index, Constellation constellation) {
    private static final Pattern WITH_INDEX = Pattern.compile("([a-z]{2,})-?0*([1-9]?)");
    private static final Pattern NUMBER = Pattern.compile("[1-9][0-9]{0,2}");
    private static final Pattern LATIN = Pattern.compile("([a-z])-?0*([1-9]?)");
    private static final Pattern VARIABLE = Pattern.compile("[a-z]{2}|v0*[1-9][0-9]{2,3}");

    private static final List<Ending> ENDINGS = endings();

    /** A way to write a constellation at the end of a designation, as a strict key. */
    private record Ending(String key, Constellation constellation) {}

    private static List<Ending> endings() {
        List<Ending> endings = new ArrayList<>();
        for (Constellation constellation : Constellations.bundled().all()) {
            endings.add(new Ending(LookupKey.strict(constellation.abbreviation()), constellation));
            endings.add(new Ending(LookupKey.strict(constellation.name()), constellation));
            endings.add(new Ending(LookupKey.strict(constellation.genitive()), constellation));
        }
        // Longest first, so that "leominoris" is not read as something in Leo.
        endings.sort(Comparator.comparingInt((Ending e) -> e.key().length()).reversed());
        return List.copyOf(endings);
    }

    /**
     * Parses what a person types: {@code alpha lyrae}, {@code Alp Lyr}, {@code α Lyr}, {@code alLyr},
     * {@code gam-1 And}. Latin letters keep their case: {@code b Cyg} is not {@code B Cyg}.
     */
    public static Optional<StarDesignation> parse(String text) {
        String key = LookupKey.strict(text);
        for (Ending ending : ENDINGS) {
            if (key.length() > ending.key().length() && key.endsWith(ending.key())) {
                String head = key.substring(0, key.length() - ending.key().length());
                Optional<StarDesignation> read = ofHead(head, text.strip(), ending.constellation());
                if (read.isPresent()) {
                    return read;
                }
            }
        }
        return Optional.empty();
    }

    /** Parses only the form that {@link #abbreviated} writes; fast, for tables. */
    static Optional<StarDesignation> ofAbbreviated(String text) {
        int space = text.indexOf(' ');
        if (space < 1) {
            return Optional.empty();
        }
        return Constellations.bundled().abbreviated(text.substring(space + 1)).map(constellation -> {
            String mark = text.substring(0, space);
            char last = mark.charAt(mark.length() - 1);
            boolean indexed = Character.isLetter(mark.charAt(0)) && mark.charAt(0) != 'V' && Character.isDigit(last);
            return indexed
                    ? new StarDesignation(mark.substring(0, mark.length() - 1), last - '0', constellation)
                    : new StarDesignation(mark, 0, constellation);
        });
    }

    private static Optional<StarDesignation> ofHead(String head, String text, Constellation constellation) {
        if (NUMBER.matcher(head).matches()) {
            return Optional.of(new StarDesignation(head, 0, constellation));
        }
        Matcher greek = WITH_INDEX.matcher(head);
        if (greek.matches()) {
            Optional<GreekLetter> letter = GreekLetter.ofWord(greek.group(1));
            if (letter.isPresent()) {
                return Optional.of(
                        new StarDesignation(letter.get().abbreviation(), indexOf(greek.group(2)), constellation));
            }
        }
        Matcher latin = LATIN.matcher(head);
        if (latin.matches()) {
            return Optional.of(new StarDesignation(text.substring(0, 1), indexOf(latin.group(2)), constellation));
        }
        if (VARIABLE.matcher(head).matches()) {
            return Optional.of(new StarDesignation(head.toUpperCase(Locale.ROOT), 0, constellation));
        }
        return Optional.empty();
    }

    private static int indexOf(String digits) {
        return digits.isEmpty() ? 0 : Integer.parseInt(digits);
    }

    /** The short form, e.g. {@code gam1 And}. */
    public String abbreviated() {
        return mark + (index == 0 ? "" : index) + " " + constellation.abbreviation();
    }

    /** The long form, e.g. {@code Gamma1 Andromedae}. */
    public String spelled() {
        String letter = mark.length() > 1 && Character.isLowerCase(mark.charAt(0))
                ? GreekLetter.ofWord(mark)
                        .map(greek -> greek.name().charAt(0) + greek.spelled().substring(1))
                        .orElse(mark)
                : mark;
        return letter + (index == 0 ? "" : index) + " " + constellation.genitive();
    }

    /** The same designation without its index. */
    public StarDesignation withoutIndex() {
        return new StarDesignation(mark, 0, constellation);
    }
}
