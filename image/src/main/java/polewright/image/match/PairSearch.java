package polewright.image.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;

/**
 * The search for a narrow field of few stars whose position and scale are nearly known: a pattern of {@link
 * PatternSearch} extends beyond such a field, since the brighter neighbours of its stars lie outside it.
 *
 * <p>Every star of the neighbourhood is tried for each of the frame's brightest, and every second star at the right
 * distance for each other; two stars determine a plate, which is worth judging once two more match. Only pairs inside
 * the part of the sky, at the scale and with a similar magnitude difference as on the frame are tried, and only those
 * count as trials in the odds.
 */
final class PairSearch {
    // Wider fields contain whole patterns, and are not flat.
    private static final double MOST_HALF_DIAGONAL_RAD = Math.toRadians(1);
    private static final double MOST_PATCH_RAD = Math.toRadians(20);
    private static final int FIRST = 4;
    private static final int OTHERS = 9;
    private static final int NEEDED = 2;
    private static final double SHORTEST_PIXELS = 60;
    private static final double CENTRE_PIXELS = 2;
    // Positions of stars whose proper motion is unknown.
    private static final double ATLAS_RAD = Angle.ofArcseconds(1).radians();
    // From colour and the detector's spectral response (common practice).
    private static final double UNEQUAL_MAGNITUDES = 1.7;
    // This many of the atlas's brightest stars per frame are enough.
    private static final double STARS_ON_FRAME = 12;
    private static final double SCALE_SLACK = 0.01;

    private final Detections detections;
    private final SearchedSky sky;
    private final MatchHint hint;
    private final double leastRad;
    private final double mostRad;

    PairSearch(Detections detections, SearchedSky sky, MatchHint hint) {
        this.detections = detections;
        this.sky = sky;
        this.hint = hint;
        leastRad = hint.scale().least().radians() * (1 - SCALE_SLACK);
        mostRad = hint.scale().most().radians() * (1 + SCALE_SLACK);
    }

    /** Whether enough is known of a frame for this search, and its field is narrow. */
    static boolean isFor(Detections detections, MatchHint hint) {
        return hint.near()
                .filter(near -> near.radius().radians() <= MOST_PATCH_RAD
                        && detections.halfDiagonal() * hint.scale().most().radians() <= MOST_HALF_DIAGONAL_RAD)
                .isPresent();
    }

    /** A guess that is worth judging. */
    private record Guess(Hypothesis stars, boolean mirrored) {}

    /** The result from the neighbourhood of one star. */
    private record Around(List<Guess> guesses, long tried) {}

    /** The first guess that the judge accepts. */
    <T> Optional<T> firstThat(PatternSearch.Judge<T> judge) {
        int[] ranks = ranks();
        int below = ranks.length == 0 ? 0 : ranks[ranks.length - 1] + 1;
        List<Around> all = IntStream.range(0, ranks.length)
                .parallel()
                .mapToObj(i -> new Neighbours(ranks[i], below).tried())
                .toList();
        double trials = Math.max(1, all.stream().mapToLong(Around::tried).sum());
        return all.stream()
                .flatMap(around -> around.guesses().stream())
                .map(guess -> judge.judge(guess.stars(), guess.mirrored(), trials))
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** The brightest stars of the patch, to a frame's worth everywhere. */
    private int[] ranks() {
        SkyPatch patch = sky.patch().orElseThrow();
        Vector3D middle = patch.direction();
        IntStream.Builder found = IntStream.builder();
        sky.stars()
                .grid()
                .near(
                        middle.getX(),
                        middle.getY(),
                        middle.getZ(),
                        patch.radius().radians(),
                        sky.stars().count(),
                        (rank, apart2) -> found.add(rank));
        int[] ranks = found.build().sorted().toArray();
        double patchSteradians = 2 * Math.PI * (1 - Math.cos(patch.radius().radians()));
        double scale = Math.sqrt(leastRad * mostRad);
        double frames = patchSteradians / (detections.width() * scale * detections.height() * scale);
        return Arrays.copyOf(ranks, (int) Math.min(ranks.length, Math.ceil(STARS_ON_FRAME * frames)));
    }

    /** One star of the sky with those around it, in the tangent plane there. */
    private final class Neighbours {
        private static final int SIDE = 24;

        private final int middle;
        private final double magnitude;
        private final double reach;
        private final Vector3D direction;
        private final Vector3D east;
        private final Vector3D north;
        private final List<Integer> ranks = new ArrayList<>();
        // The first neighbour in each square, and the next one in the same square for each neighbour.
        private final int[] firstIn = new int[SIDE * SIDE];
        private final int[] nextIn;
        private final double[] x;
        private final double[] y;
        private final double[] magnitudes;

        Neighbours(int middle, int below) {
            this.middle = middle;
            magnitude = sky.stars().magnitude(middle);
            reach = 2 * detections.halfDiagonal() * mostRad;
            direction = sky.stars().direction(middle);
            Vector3D pole = Math.abs(direction.getZ()) < 0.9 ? Vector3D.PLUS_K : Vector3D.PLUS_I;
            east = Vector3D.crossProduct(pole, direction).normalize();
            north = Vector3D.crossProduct(direction, east);
            sky.stars()
                    .grid()
                    .near(direction.getX(), direction.getY(), direction.getZ(), reach, below, (rank, chord2) -> {
                        if (rank != middle) {
                            ranks.add(rank);
                        }
                    });
            int count = ranks.size();
            x = new double[count];
            y = new double[count];
            magnitudes = new double[count];
            nextIn = new int[count];
            Arrays.fill(firstIn, -1);
            for (int i = 0; i < count; i++) {
                Vector3D star = sky.stars().direction(ranks.get(i));
                double z = star.dotProduct(direction);
                x[i] = star.dotProduct(east) / z;
                y[i] = star.dotProduct(north) / z;
                magnitudes[i] = sky.stars().magnitude(ranks.get(i));
                int cell = cell(x[i]) * SIDE + cell(y[i]);
                nextIn[i] = firstIn[cell];
                firstIn[cell] = i;
            }
        }

        private int cell(double coordinate) {
            return Math.max(0, Math.min(SIDE - 1, (int) ((coordinate / reach + 1) / 2 * SIDE)));
        }

        Around tried() {
            List<Guess> guesses = new ArrayList<>();
            long tried = 0;
            int stars = Math.min(OTHERS, detections.count());
            for (int i = 0; i < Math.min(FIRST, stars); i++) {
                for (int j = 0; j < stars; j++) {
                    if (j == i) {
                        continue;
                    }
                    double dx = detections.x(j) - detections.x(i);
                    double dy = detections.y(j) - detections.y(i);
                    double pixels = Math.hypot(dx, dy);
                    if (pixels < SHORTEST_PIXELS) {
                        continue;
                    }
                    double least2 = leastRad * leastRad * pixels * pixels;
                    double most2 = mostRad * mostRad * pixels * pixels;
                    for (int b = 0; b < x.length; b++) {
                        double apart2 = x[b] * x[b] + y[b] * y[b];
                        if (apart2 < least2 || apart2 > most2 || !isAlike(i, j, b)) {
                            continue;
                        }
                        for (int parity = 0; parity < 2; parity++) {
                            boolean mirrored = parity == 1;
                            if (hint.mirrored().isEmpty() || hint.mirrored().get() == mirrored) {
                                tried++;
                                guess(i, j, b, mirrored, stars).ifPresent(guesses::add);
                            }
                        }
                    }
                }
            }
            return new Around(guesses, tried);
        }

        /** Whether the magnitude difference of a neighbour and the middle is similar to that of two detections. */
        private boolean isAlike(int i, int j, int b) {
            double onFrame = 2.5 * Math.log10(detections.flux(i) / detections.flux(j));
            return Math.abs(magnitudes[b] - magnitude - onFrame) < UNEQUAL_MAGNITUDES;
        }

        private Optional<Guess> guess(int i, int j, int b, boolean mirrored, int stars) {
            double sign = mirrored ? -1 : 1;
            double vx = sign * (detections.x(j) - detections.x(i));
            double vy = detections.y(j) - detections.y(i);
            double norm = 1 / (vx * vx + vy * vy);
            // The complex number that rotates and scales the frame onto the sky.
            double re = (x[b] * vx + y[b] * vy) * norm;
            double im = (y[b] * vx - x[b] * vy) * norm;
            double scale = Math.hypot(re, im);
            int[] others = new int[NEEDED];
            int[] theirStars = new int[NEEDED];
            int found = 0;
            for (int k = 0; k < stars && found < NEEDED; k++) {
                if (k == i || k == j) {
                    continue;
                }
                double wx = sign * (detections.x(k) - detections.x(i));
                double wy = detections.y(k) - detections.y(i);
                double lever = Math.sqrt((wx * wx + wy * wy) * norm);
                double limit = (CENTRE_PIXELS * scale + ATLAS_RAD) * (1 + lever);
                int star = near(re * wx - im * wy, re * wy + im * wx, limit);
                if (star >= 0 && star != b && isAlike(i, k, star)) {
                    others[found] = k;
                    theirStars[found++] = star;
                }
            }
            return found < NEEDED
                    ? Optional.empty()
                    : Optional.of(new Guess(
                            faintestFirst(new int[] {i, j, others[0], others[1]}, new int[] {
                                middle, ranks.get(b), ranks.get(theirStars[0]), ranks.get(theirStars[1])
                            }),
                            mirrored));
        }

        /** The neighbour at a position; −1 if there is none. */
        private int near(double px, double py, double limit) {
            for (int column = cell(px - limit); column <= cell(px + limit); column++) {
                for (int row = cell(py - limit); row <= cell(py + limit); row++) {
                    for (int star = firstIn[column * SIDE + row]; star >= 0; star = nextIn[star]) {
                        double dx = x[star] - px;
                        double dy = y[star] - py;
                        if (dx * dx + dy * dy <= limit * limit) {
                            return star;
                        }
                    }
                }
            }
            return -1;
        }
    }

    /** As a pattern: its faintest star first, then the one farthest from it. */
    private Hypothesis faintestFirst(int[] stars, int[] ranks) {
        int faintest = 0;
        for (int s = 1; s < stars.length; s++) {
            faintest = stars[s] > stars[faintest] ? s : faintest;
        }
        swap(stars, ranks, 0, faintest);
        int farthest = 1;
        for (int s = 2; s < stars.length; s++) {
            farthest = apart(stars[0], stars[s]) > apart(stars[0], stars[farthest]) ? s : farthest;
        }
        swap(stars, ranks, 1, farthest);
        return new Hypothesis(stars[0], stars[1], stars[2], stars[3], ranks[0], ranks[1], ranks[2], ranks[3]);
    }

    private double apart(int one, int other) {
        return Math.hypot(detections.x(one) - detections.x(other), detections.y(one) - detections.y(other));
    }

    private static void swap(int[] stars, int[] ranks, int one, int other) {
        int star = stars[one];
        int rank = ranks[one];
        stars[one] = stars[other];
        ranks[one] = ranks[other];
        stars[other] = star;
        ranks[other] = rank;
    }
}
