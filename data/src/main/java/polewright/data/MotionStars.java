package polewright.data;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarDesignation;
import polewright.sky.place.CatalogueStar;

/**
 * The list of bright stars with proper motion, cleaned.
 *
 * <p>A row is {@code name, designation, frame, RA h, m, s, Dec d, m, s, pmRA·cos δ, pmDec (mas/yr), radial velocity
 * (km/s), parallax (mas), V, …}. Left out: comments; rows that are not in the ICRS; rows whose designation is not
 * that of a star (clusters, galaxies, nebulae, poles, test points); stars fainter than 12 or without a magnitude.
 * Rows with one designation, or with one position within 1″, are one star with several names.
 */
final class MotionStars {
    static final String PACKAGE = "swe-basic-data (Debian)";

    private static final double FAINTEST = 12;
    private static final double SAME_PLACE_ARCSEC = 1;
    private static final double YEARS_FROM_HIPPARCOS_EPOCH = 8.75;

    /**
     * Names that the list gives to something that is not a star of that name, or to another star; each with the
     * correction.
     */
    private static final Set<String> WRONG_NAMES = Set.of(
            // Column markers, not names.
            "Miz0",
            "Alc0",
            // The companion, which has a row of its own.
            "alp Cen/Proxima Centauri",
            // 42 Draconis has this name, not xi (which is 32).
            "32 Dra/Fafnir");

    private static final CatalogueStar ALPHA_CENTAURI = new CatalogueStar(
            Angle.ofHours(sexagesimal("14", "39", "36.4958")),
            Angle.ofDegrees(sexagesimal("-60", "50", "02.309")),
            -3678.06,
            482.87,
            742.0,
            -21.6);

    private MotionStars() {}

    /** One star of the list; designations are abbreviated. */
    record Star(List<String> names, List<String> designations, CatalogueStar place, double magnitude) {
        double[] unit() {
            return StarPlaces.unit(
                    place.rightAscension().degrees(), place.declination().degrees());
        }
    }

    static List<Star> read(Path file) throws IOException {
        Map<String, Star> byDesignation = new LinkedHashMap<>();
        for (String line : Files.readAllLines(Sources.existing(file, PACKAGE), StandardCharsets.ISO_8859_1)) {
            if (!line.isBlank() && !line.startsWith("#")) {
                ofRow(line.split(",", -1))
                        .ifPresent(
                                star -> byDesignation.merge(star.designations().get(0), star, MotionStars::joined));
            }
        }
        List<Star> stars = new ArrayList<>();
        for (Star star : byDesignation.values()) {
            addOrJoin(star, stars);
        }
        return stars;
    }

    private static void addOrJoin(Star star, List<Star> stars) {
        for (int i = 0; i < stars.size(); i++) {
            if (StarPlaces.arcsecBetween(stars.get(i).unit(), star.unit()) <= SAME_PLACE_ARCSEC) {
                stars.set(i, joined(stars.get(i), star));
                return;
            }
        }
        stars.add(star);
    }

    /** Both rows' names, with the first row's values. */
    private static Star joined(Star first, Star second) {
        Set<String> names = new LinkedHashSet<>(first.names);
        names.addAll(second.names);
        Set<String> designations = new LinkedHashSet<>(first.designations);
        designations.addAll(second.designations);
        return new Star(List.copyOf(names), List.copyOf(designations), first.place, first.magnitude);
    }

    private static Optional<Star> ofRow(String[] row) {
        Optional<String> designation = designation(row[1].strip());
        double magnitude = number(row[13]);
        if (designation.isEmpty() || !row[2].strip().equals("ICRS") || !(magnitude <= FAINTEST)) {
            return Optional.empty();
        }
        String name = row[0].strip();
        boolean named =
                !name.isEmpty() && !WRONG_NAMES.contains(name) && !WRONG_NAMES.contains(designation.get() + "/" + name);
        CatalogueStar place = corrected(
                designation.get(),
                new CatalogueStar(
                        Angle.ofHours(sexagesimal(row[3], row[4], row[5])),
                        Angle.ofDegrees(sexagesimal(row[6], row[7], row[8])),
                        number(row[9]),
                        number(row[10]),
                        // A negative parallax is noise around an unknown one.
                        Math.max(0, number(row[12])),
                        number(row[11])));
        return Optional.of(new Star(named ? List.of(name) : List.of(), List.of(designation.get()), place, magnitude));
    }

    /** A trailing component letter is dropped: the rows of a pair are joined by position. */
    private static Optional<String> designation(String text) {
        if (text.matches("HR\\d+|HD\\d+")) {
            return Optional.of(text.substring(0, 2) + " " + text.substring(2));
        }
        return StarDesignation.parse(text)
                .or(() -> StarDesignation.parse(text.replaceFirst("A$", "")))
                .map(StarDesignation::abbreviated);
    }

    /** Corrects errors of the list that its own check against Hipparcos positions ({@link NamedStarRows}) reveals. */
    private static CatalogueStar corrected(String designation, CatalogueStar place) {
        return switch (designation) {
            // Right ascension printed 05h42m for 05h24m (HIP 25281).
            case "eta Ori" ->
                withPlace(place, place.rightAscension().minus(Angle.ofHours(18 / 60.0)), place.declination());
            // The position is that of the pair, 6″ from its brighter star, which the list has elsewhere as a check row
            // (AA11_page_B73, from the Astronomical Almanac for 2011).
            case "alp Cen" -> ALPHA_CENTAURI;
            // The position is that of epoch 1991.25 (HIP 66249 is 2.3″ away, along the motion of 8.75 years).
            case "zet Vir" -> atJ2000(place);
            default -> place;
        };
    }

    private static CatalogueStar atJ2000(CatalogueStar star) {
        Angle east = Angle.ofArcseconds(star.properMotionRaMasPerYear() / 1000 * YEARS_FROM_HIPPARCOS_EPOCH);
        Angle north = Angle.ofArcseconds(star.properMotionDecMasPerYear() / 1000 * YEARS_FROM_HIPPARCOS_EPOCH);
        return withPlace(
                star,
                star.rightAscension().plus(east.times(1 / star.declination().cos())),
                star.declination().plus(north));
    }

    private static CatalogueStar withPlace(CatalogueStar star, Angle rightAscension, Angle declination) {
        return new CatalogueStar(
                rightAscension,
                declination,
                star.properMotionRaMasPerYear(),
                star.properMotionDecMasPerYear(),
                star.parallaxMas(),
                star.radialVelocityKmPerSecond());
    }

    private static double sexagesimal(String whole, String minutes, String seconds) {
        double value = Math.abs(number(whole)) + number(minutes) / 60 + number(seconds) / 3600;
        return whole.strip().startsWith("-") ? -value : value;
    }

    private static double number(String column) {
        return Double.parseDouble(column.strip());
    }
}
