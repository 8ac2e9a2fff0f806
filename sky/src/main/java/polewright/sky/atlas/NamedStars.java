package polewright.sky.atlas;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

/**
 * Bright and named stars, found by any name or designation.
 *
 * <p>Lookup ignores case, spaces, accents and punctuation, and accepts Greek letters as symbols, names or
 * abbreviations: {@code Vega}, {@code alpha lyrae}, {@code alp Lyr}, {@code α Lyr}, {@code 3 Lyr}, {@code HIP 91262}. A
 * letter without its index means the brightest star with that letter. A name shared by two stars means the brighter
 * one.
 */
public final class NamedStars {
    private final List<NamedStar> brightestFirst;
    private final NameIndex<NamedStar> byName = new NameIndex<>();
    private final Map<StarDesignation, NamedStar> byDesignation = new HashMap<>();

    private NamedStars(List<NamedStar> brightestFirst) {
        this.brightestFirst = List.copyOf(brightestFirst);
        for (NamedStar star : this.brightestFirst) {
            star.names().forEach(name -> byName.add(name, star));
            star.designations()
                    .forEach(text -> StarDesignation.ofAbbreviated(text)
                            .ifPresentOrElse(
                                    designation -> byDesignation.putIfAbsent(designation, star),
                                    () -> byName.add(text, star)));
        }
        // Last, so that a star whose letter has no index takes precedence.
        for (NamedStar star : this.brightestFirst) {
            designationsOf(star).forEach(designation -> byDesignation.putIfAbsent(designation.withoutIndex(), star));
        }
    }

    private static Stream<StarDesignation> designationsOf(NamedStar star) {
        return star.designations().stream().flatMap(text -> StarDesignation.ofAbbreviated(text).stream());
    }

    public static NamedStars bundled() {
        return Bundled.STARS;
    }

    private static final class Bundled {
        static final NamedStars STARS = new NamedStars(BundledTable.rows("named-stars.tsv", 9).stream()
                .map(NamedStars::ofRow)
                .toList());
    }

    /** Built when the first name is misspelt: most runs never need it. */
    private static final class Spellings {
        static final List<NameIndex.Spelling> ALL = NameIndex.Spelling.allOf(bundled().all().stream()
                .flatMap(star -> Stream.concat(
                        star.names().stream(), designationsOf(star).map(StarDesignation::spelled))));
    }

    private static NamedStar ofRow(String[] row) {
        Angle ra = Angle.ofDegrees(Double.parseDouble(row[2]));
        Angle dec = Angle.ofDegrees(Double.parseDouble(row[3]));
        boolean motionKnown = !row[4].isEmpty();
        CatalogueStar place = motionKnown
                ? new CatalogueStar(
                        ra,
                        dec,
                        Double.parseDouble(row[4]),
                        Double.parseDouble(row[5]),
                        Double.parseDouble(row[6]),
                        Double.parseDouble(row[7]))
                : CatalogueStar.fixed(ra, dec);
        return new NamedStar(
                BundledTable.list(row[0]), BundledTable.list(row[1]), place, Double.parseDouble(row[8]), motionKnown);
    }

    /** All of them, brightest first. */
    public List<NamedStar> all() {
        return brightestFirst;
    }

    public Optional<NamedStar> find(String name) {
        // Designations first, because they are case-sensitive and names are not. Exactly written ones before all
        // others, so that the variable star BE Cet is not taken for beta.
        return StarDesignation.ofAbbreviated(name.strip())
                .map(byDesignation::get)
                .or(() -> StarDesignation.parse(name).flatMap(this::find))
                .or(() -> byName.find(name));
    }

    /** Whether typing a star's label finds that star, and not a brighter one of the same name. */
    public boolean isFoundByItsLabel(NamedStar star) {
        return find(star.label()).filter(star::equals).isPresent();
    }

    private Optional<NamedStar> find(StarDesignation designation) {
        return otherCases(designation).stream()
                .flatMap(form -> Optional.ofNullable(byDesignation.get(form)).stream())
                .findFirst();
    }

    /** The designation as typed, then with its Latin letter in lower case, then in upper case. */
    private static List<StarDesignation> otherCases(StarDesignation typed) {
        List<StarDesignation> forms = new ArrayList<>();
        forms.add(typed);
        if (typed.mark().length() == 1) {
            int letter = typed.mark().codePointAt(0);
            forms.add(new StarDesignation(
                    Character.toString(Character.toLowerCase(letter)), typed.index(), typed.constellation()));
            forms.add(new StarDesignation(
                    Character.toString(Character.toUpperCase(letter)), typed.index(), typed.constellation()));
        }
        return forms;
    }

    /** Similarly spelled names, nearest first; empty when there are none. */
    public List<String> near(String name) {
        return NameIndex.near(name, Spellings.ALL);
    }

    /**
     * The star with a name.
     *
     * @throws InputRefused when there is none; the message lists similarly spelled names
     */
    public NamedStar named(String name) {
        return find(name).orElseThrow(() -> {
            List<String> near = near(name);
            return new InputRefused(
                    "no star is called '" + name.strip() + "'",
                    near.isEmpty()
                            ? "give a name such as Vega, a designation such as alp Lyr or 61 Cyg, or a number such as"
                                    + " HIP 91262"
                            : "did you mean " + String.join(", ", near) + "? If not, give a designation such as alp"
                                    + " Lyr");
        });
    }
}
