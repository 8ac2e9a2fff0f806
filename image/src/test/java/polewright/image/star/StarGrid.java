package polewright.image.star;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/** Isolated positions in rows and columns, each at a random place within its pixel. */
final class StarGrid {
    private static final double SAME = 2;

    private final int width;
    private final List<double[]> places = new ArrayList<>();

    StarGrid(int side, int spacing, long seed) {
        width = side * spacing;
        SplittableRandom random = new SplittableRandom(seed);
        for (int j = 0; j < side; j++) {
            for (int i = 0; i < side; i++) {
                places.add(new double[] {
                    spacing * (i + 0.5) - 0.5 + random.nextDouble(), spacing * (j + 0.5) - 0.5 + random.nextDouble()
                });
            }
        }
    }

    int width() {
        return width;
    }

    int size() {
        return places.size();
    }

    void forEach(PlaceAction action) {
        places.forEach(p -> action.at(p[0], p[1]));
    }

    /** Each position with the nearest star found, within two pixels. */
    List<Pair> pairs(StarList stars) {
        List<Pair> pairs = new ArrayList<>();
        for (double[] p : places) {
            stars.stars().stream()
                    .min(Comparator.comparingDouble(s -> Math.hypot(s.x() - p[0], s.y() - p[1])))
                    .filter(s -> Math.hypot(s.x() - p[0], s.y() - p[1]) < SAME)
                    .ifPresent(s -> pairs.add(new Pair(p[0], p[1], s)));
        }
        return pairs;
    }

    /** An action at each position. */
    @FunctionalInterface
    interface PlaceAction {
        void at(double x, double y);
    }

    /**
     * A position and the star found there.
     *
     * @param x true column
     * @param y true row
     */
    record Pair(double x, double y, FoundStar star) {}
}
