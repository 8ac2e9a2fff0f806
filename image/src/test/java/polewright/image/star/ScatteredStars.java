package polewright.image.star;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;

/** Isolated stars scattered over a sky, few bright and many faint, and the comparison with those found. */
final class ScatteredStars {
    private static final int USUAL_MARGIN = 12;
    // Stars half as bright are 2.3 times as many (fact of the trade: about 2.5 per magnitude among bright ones).
    private static final double SLOPE = 1.2;

    private final List<Truth> truths = new ArrayList<>();

    /**
     * Draws positions.
     *
     * @param apart least distance of two stars, pixels
     * @param faintest flux, electrons
     */
    ScatteredStars(int width, int height, int count, double apart, double faintest, long seed) {
        this(width, height, count, apart, faintest, seed, USUAL_MARGIN);
    }

    ScatteredStars(int width, int height, int count, double apart, double faintest, long seed, int margin) {
        SplittableRandom random = new SplittableRandom(seed);
        while (truths.size() < count) {
            double x = margin + random.nextDouble() * (width - 2 * margin);
            double y = margin + random.nextDouble() * (height - 2 * margin);
            if (truths.stream().allMatch(t -> Math.hypot(t.x - x, t.y - y) > apart)) {
                truths.add(new Truth(x, y, Math.min(1e6, faintest * Math.pow(1 - random.nextDouble(), -1 / SLOPE))));
            }
        }
    }

    List<Truth> truths() {
        return truths;
    }

    ScatteredStars drawOn(DrawnSky sky, double fwhm) {
        truths.forEach(t -> sky.star(t.x, t.y, t.flux, fwhm));
        return this;
    }

    /** Compares with the stars found within some pixels of each. */
    Outcome outcome(StarList list, double within) {
        List<Hit> hits = new ArrayList<>();
        Set<FoundStar> used = new HashSet<>();
        for (Truth truth : truths) {
            Optional<FoundStar> nearest = list.stars().stream()
                    .min(Comparator.comparingDouble(truth::distanceTo))
                    .filter(s -> truth.distanceTo(s) < within);
            nearest.ifPresent(s -> hits.add(new Hit(truth, s)));
            nearest.ifPresent(used::add);
        }
        List<FoundStar> spurious = new ArrayList<>(list.stars());
        spurious.removeAll(used);
        return new Outcome(hits, spurious);
    }

    /**
     * A star that was drawn.
     *
     * @param x column
     * @param y row
     * @param flux electrons
     */
    record Truth(double x, double y, double flux) {
        double distanceTo(FoundStar star) {
            return Math.hypot(star.x() - x, star.y() - y);
        }
    }

    /** A drawn star and the one found there. */
    record Hit(Truth truth, FoundStar star) {}

    /**
     * The result.
     *
     * @param spurious stars found where none was drawn
     */
    record Outcome(List<Hit> hits, List<FoundStar> spurious) {
        double rms() {
            return Math.sqrt(hits.stream()
                    .mapToDouble(h -> Math.pow(h.truth.distanceTo(h.star), 2) / 2)
                    .average()
                    .orElse(Double.NaN));
        }

        /** Mean of (error/sigma)² over both coordinates: 1 if the sigmas are true. */
        double errorsOverSigmas() {
            return hits.stream()
                    .mapToDouble(h -> (Math.pow((h.star.x() - h.truth.x) / h.star.sigmaX(), 2)
                                    + Math.pow((h.star.y() - h.truth.y) / h.star.sigmaY(), 2))
                            / 2)
                    .average()
                    .orElse(Double.NaN);
        }
    }
}
