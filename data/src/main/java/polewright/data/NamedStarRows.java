package polewright.data;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.place.CatalogueStar;

/**
 * The named stars: those with known motion under all their names, then the other stars with a Bayer letter or
 * Flamsteed number.
 *
 * <p>A star with motion and a Hipparcos star within 10″ and 2.5 magnitudes are the same; if their magnitudes differ
 * by more than 1, that of Hipparcos is used. A designation that Hipparcos gives to a star more than 1′ away is
 * removed from the star with motion, and a star that loses its only designation this way is left out, because its
 * position is in doubt.
 */
final class NamedStarRows {
    private static final double SAME_STAR_ARCSEC = 10;
    private static final double SAME_STAR_MAGNITUDES = 2.5;
    private static final double DOUBTFUL_MAGNITUDES = 1;
    private static final double NEIGHBOUR_ARCSEC = 60;
    private static final double TYCHO_ARCSEC = 1;
    private static final double FAINTEST_WITHOUT_MOTION = 7.5;

    private final HipparcosStars hipparcos;
    private final Map<String, List<HipparcosStars.Star>> byDesignation = new HashMap<>();
    private final Set<Integer> taken = new HashSet<>();

    /** Notes on what was dropped or has no counterpart, for the person who runs the builder. */
    private final List<String> notes = new ArrayList<>();

    NamedStarRows(HipparcosStars hipparcos) {
        this.hipparcos = hipparcos;
        for (HipparcosStars.Star star : hipparcos.stars()) {
            for (String designation : star.designations()) {
                byDesignation
                        .computeIfAbsent(designation, key -> new ArrayList<>())
                        .add(star);
            }
        }
    }

    List<String> notes() {
        return List.copyOf(notes);
    }

    /** Stars with known motion, brightest first. */
    List<NamedStar> withMotion(List<MotionStars.Star> motions) {
        List<NamedStar> rows = new ArrayList<>();
        for (MotionStars.Star star : motions) {
            List<String> undisputed = star.designations().stream()
                    .filter(designation -> !isElsewhere(designation, star))
                    .toList();
            int twin = nearest(star);
            if (twin < 0) {
                notes.add("no Hipparcos star at " + star.designations() + " V " + star.magnitude());
            }
            List<String> twinNames =
                    twin < 0 ? List.of() : hipparcos.stars().get(twin).names();
            List<String> twinDesignations =
                    twin < 0 ? List.of() : hipparcos.stars().get(twin).designations();
            List<String> numbers =
                    twin < 0 ? List.of() : hipparcos.stars().get(twin).numbers();
            if (undisputed.isEmpty() && twinDesignations.isEmpty()) {
                notes.add("left out " + star.designations() + ": Hipparcos has it elsewhere");
                continue;
            }
            rows.add(new NamedStar(
                    union(true, observersName(undisputed), twinNames, star.names(), everydayNames(undisputed)),
                    union(false, twinDesignations, undisputed, numbers),
                    star.place(),
                    twin < 0
                            ? star.magnitude()
                            : magnitude(star, hipparcos.stars().get(twin)),
                    true));
        }
        rows.sort(BRIGHTEST_FIRST);
        return rows;
    }

    /**
     * The other stars with a letter or number, without motion. Call after {@link #withMotion}.
     *
     * @param tycho has more precise positions than this Hipparcos list
     */
    List<NamedStar> withoutMotion(List<NamedStar> withMotion, TychoStars tycho) {
        double[] vectors = new double[3 * withMotion.size()];
        for (int i = 0; i < withMotion.size(); i++) {
            CatalogueStar place = withMotion.get(i).place();
            double[] unit = StarPlaces.unit(
                    place.rightAscension().degrees(), place.declination().degrees());
            System.arraycopy(unit, 0, vectors, 3 * i, 3);
        }
        StarPlaces moving = new StarPlaces(vectors);
        List<NamedStar> rows = new ArrayList<>();
        for (int i = 0; i < hipparcos.stars().size(); i++) {
            HipparcosStars.Star star = hipparcos.stars().get(i);
            boolean lettered = star.designations().stream().anyMatch(d -> !d.matches("[A-Z]{2} .*|V\\d+ .*"));
            // A companion of a star with motion would be left behind by it.
            if (lettered
                    && !taken.contains(i)
                    && star.magnitude() <= FAINTEST_WITHOUT_MOTION
                    && moving.nearestWithin(NEIGHBOUR_ARCSEC, star.unit()) < 0) {
                rows.add(new NamedStar(
                        star.names(),
                        union(false, star.designations(), star.numbers()),
                        finest(star, tycho),
                        star.magnitude(),
                        false));
            }
        }
        rows.sort(BRIGHTEST_FIRST);
        return rows;
    }

    static final Comparator<NamedStar> BRIGHTEST_FIRST = Comparator.comparingDouble(NamedStar::magnitude)
            .thenComparing(star -> star.place().rightAscension());

    /** Observers' names for stars that the sources name otherwise; shown first (common practice). */
    private static List<String> observersName(List<String> designations) {
        return designations.contains("sig Oct") ? List.of("Sigma Octantis") : List.of();
    }

    /** Names in everyday use that no source has (common practice). */
    private static List<String> everydayNames(List<String> designations) {
        return designations.contains("alp UMi") ? List.of("Pole Star", "North Star") : List.of();
    }

    private static CatalogueStar finest(HipparcosStars.Star star, TychoStars tycho) {
        int at = tycho.places().nearestWithin(TYCHO_ARCSEC, star.unit());
        if (at < 0) {
            return CatalogueStar.fixed(Angle.ofDegrees(star.raDeg()), Angle.ofDegrees(star.decDeg()));
        }
        double[] v = tycho.unit(at);
        return CatalogueStar.fixed(
                Angle.ofRadians(Math.atan2(v[1], v[0])), Angle.ofRadians(Math.atan2(v[2], Math.hypot(v[0], v[1]))));
    }

    private boolean isElsewhere(String designation, MotionStars.Star star) {
        List<HipparcosStars.Star> bearers = byDesignation.getOrDefault(designation, List.of());
        boolean elsewhere = !bearers.isEmpty()
                && bearers.stream()
                        .allMatch(bearer -> StarPlaces.arcsecBetween(bearer.unit(), star.unit()) > NEIGHBOUR_ARCSEC);
        if (elsewhere) {
            notes.add(designation + " is HIP " + bearers.get(0).number() + ", not the star at "
                    + star.place().rightAscension() + " " + star.place().declination());
        }
        return elsewhere;
    }

    private double magnitude(MotionStars.Star star, HipparcosStars.Star twin) {
        if (Math.abs(star.magnitude() - twin.magnitude()) <= DOUBTFUL_MAGNITUDES) {
            return star.magnitude();
        }
        notes.add("magnitude of " + star.designations() + ": " + star.magnitude() + " taken as " + twin.magnitude());
        return twin.magnitude();
    }

    private int nearest(MotionStars.Star star) {
        int[] best = {-1};
        hipparcos.places().within(SAME_STAR_ARCSEC, star.unit(), i -> {
            boolean alike = Math.abs(hipparcos.stars().get(i).magnitude() - star.magnitude()) <= SAME_STAR_MAGNITUDES;
            if (alike && !taken.contains(i) && (best[0] < 0 || nearer(i, best[0], star))) {
                best[0] = i;
            }
        });
        if (best[0] >= 0) {
            taken.add(best[0]);
        }
        return best[0];
    }

    private boolean nearer(int a, int b, MotionStars.Star star) {
        return hipparcos.places().arcsecFrom(a, star.unit())
                < hipparcos.places().arcsecFrom(b, star.unit());
    }

    @SafeVarargs
    private static List<String> union(boolean ignoreCase, List<String>... lists) {
        Set<String> seen = new LinkedHashSet<>();
        List<String> all = new ArrayList<>();
        for (List<String> list : lists) {
            for (String text : list) {
                if (seen.add(ignoreCase ? text.toLowerCase(Locale.ROOT) : text)) {
                    all.add(text);
                }
            }
        }
        return all;
    }
}
