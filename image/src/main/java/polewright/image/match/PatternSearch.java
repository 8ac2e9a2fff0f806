package polewright.image.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The guesses suggested by a frame's patterns and an index, likelier ones first.
 *
 * <p>A pattern of the index holds a star's three nearest brighter neighbours. On the frame one of them may be missing,
 * a spurious detection may lie between, and two stars of nearly equal brightness may be in the opposite order. A star
 * is therefore tried with every three of its nearest few that are not clearly fainter.
 */
final class PatternSearch {
    /** A stage of the search: every three of this many neighbours, and the tolerance on codes. */
    record Stage(int neighbours, double tolerance) {}

    /**
     * Fast ones first: for a good frame; then for spurious detections between its stars; then for many of them, or a
     * lens with strong distortion.
     */
    static final List<Stage> STAGES = List.of(new Stage(4, 0.004), new Stage(6, 0.009), new Stage(8, 0.02));

    private static final double NEARLY_AS_BRIGHT = 0.7;
    private static final double CENTRE_PIXELS = 0.4;
    private static final double SMALLEST_PATTERN_PIXELS = 12;
    // From this half-diagonal on, a flat picture is too unlike the sphere, and scales are tried one by one.
    private static final double FLAT_RAD = Math.toRadians(5);
    private static final double WIDE_STEP = 1.12;
    private static final double WIDEST_RAD = Math.toRadians(50);
    private static final double BORDER_SHARE = 0.05;

    private final Detections detections;
    private final SearchedSky sky;
    private final MatchHint hint;
    private final int mostGuesses;

    PatternSearch(Detections detections, SearchedSky sky, MatchHint hint, int mostGuesses) {
        this.detections = detections;
        this.sky = sky;
        this.hint = hint;
        this.mostGuesses = mostGuesses;
    }

    /** Judges a guess. */
    @FunctionalInterface
    interface Judge<T> {
        /**
         * Judges one guess.
         *
         * @param guess which detections are which stars
         * @param mirrored whether the frame is taken for mirrored
         * @param trials among how many pairs of patterns it was chosen
         */
        Optional<T> judge(Hypothesis guess, boolean mirrored, double trials);
    }

    /** The first guess that the judge accepts. */
    <T> Optional<T> firstThat(Stage stage, Judge<T> judge) {
        Progress<T> progress = new Progress<>(judge);
        for (double pixelsPerRadian : trialScales()) {
            for (int star = 3; star < Math.min(SearchDepth.PATTERN_STARS, detections.count()); star++) {
                Optional<T> found = around(star, stage, pixelsPerRadian, progress);
                if (found.isPresent()) {
                    return found;
                }
                if (progress.guesses[0] > mostGuesses) {
                    return Optional.empty();
                }
            }
        }
        return Optional.empty();
    }

    /** What has been tried so far. */
    private final class Progress<T> {
        private final Judge<T> judge;
        private final long[] lookups = new long[1];
        private final long[] guesses = new long[1];

        Progress(Judge<T> judge) {
            this.judge = judge;
        }

        double trials() {
            return Math.max(1.0, lookups[0] * sky.patterns());
        }
    }

    /** Trial values of pixels per radian for computing codes; infinite for a field that may be treated as flat. */
    private double[] trialScales() {
        double h = detections.halfDiagonal();
        double least =
                Math.max(h / Math.tan(WIDEST_RAD), 1 / hint.scale().most().radians());
        double most = 1 / hint.scale().least().radians();
        double flat = h / Math.tan(FLAT_RAD);
        double[] scales = new double[64];
        int count = 0;
        if (most > flat) {
            scales[count++] = Double.POSITIVE_INFINITY;
        }
        double top = Math.min(flat, most);
        if (least <= top) {
            int steps = Math.max(1, (int) Math.ceil(Math.log(top / least) / Math.log(WIDE_STEP)));
            for (int step = 0; step < steps; step++) {
                scales[count++] = least * Math.pow(top / least, (step + 0.5) / steps);
            }
        }
        return Arrays.copyOf(scales, count);
    }

    private <T> Optional<T> around(int star, Stage stage, double pixelsPerRadian, Progress<T> progress) {
        int[] near = nearestNotFainter(star, stage.neighbours());
        if (near.length < 3) {
            return Optional.empty();
        }
        double[] px = new double[near.length];
        double[] py = new double[near.length];
        flatten(star, near, pixelsPerRadian, px, py);
        Neighbourhood around = new Neighbourhood(star, near, px, py);
        for (int i = 0; i < near.length; i++) {
            for (int j = i + 1; j < near.length; j++) {
                for (int k = j + 1; k < near.length; k++) {
                    Optional<T> found = triple(around, i, j, k, stage, progress);
                    if (found.isPresent()) {
                        return found;
                    }
                }
            }
        }
        return Optional.empty();
    }

    private int[] nearestNotFainter(int star, int most) {
        int[] nearest = new int[most];
        double[] distance2 = new double[most];
        int size = 0;
        double faintest = NEARLY_AS_BRIGHT * detections.flux(star);
        for (int other = 0; other < detections.count(); other++) {
            if (detections.flux(other) < faintest) {
                break;
            }
            if (other == star) {
                continue;
            }
            double dx = detections.x(other) - detections.x(star);
            double dy = detections.y(other) - detections.y(star);
            double d2 = dx * dx + dy * dy;
            if (size == most && d2 >= distance2[size - 1]) {
                continue;
            }
            int at = Math.min(size, most - 1);
            while (at > 0 && distance2[at - 1] > d2) {
                distance2[at] = distance2[at - 1];
                nearest[at] = nearest[at - 1];
                at--;
            }
            distance2[at] = d2;
            nearest[at] = other;
            size = Math.min(most, size + 1);
        }
        return Arrays.copyOf(nearest, size);
    }

    /** Positions of the neighbours in the tangent plane at the star, in pixels or in any unit. */
    private void flatten(int star, int[] near, double pixelsPerRadian, double[] px, double[] py) {
        double cx = (detections.width() - 1) / 2.0;
        double cy = (detections.height() - 1) / 2.0;
        if (Double.isInfinite(pixelsPerRadian)) {
            for (int i = 0; i < near.length; i++) {
                px[i] = detections.x(near[i]) - detections.x(star);
                py[i] = detections.y(near[i]) - detections.y(star);
            }
            return;
        }
        Vector3D s = new Vector3D(detections.x(star) - cx, detections.y(star) - cy, pixelsPerRadian).normalize();
        Vector3D east = Vector3D.crossProduct(Vector3D.PLUS_J, s).normalize();
        Vector3D north = Vector3D.crossProduct(s, east);
        for (int i = 0; i < near.length; i++) {
            Vector3D v =
                    new Vector3D(detections.x(near[i]) - cx, detections.y(near[i]) - cy, pixelsPerRadian).normalize();
            px[i] = pixelsPerRadian * v.dotProduct(east);
            py[i] = pixelsPerRadian * v.dotProduct(north);
        }
    }

    /** A star with those near it, in the tangent plane at the star. */
    private static final class Neighbourhood {
        private final int star;
        private final int[] near;
        private final double[] px;
        private final double[] py;

        Neighbourhood(int star, int[] near, double[] px, double[] py) {
            this.star = star;
            this.near = near;
            this.px = px;
            this.py = py;
        }

        double square(int which) {
            return px[which] * px[which] + py[which] * py[which];
        }
    }

    /** Tries each of three neighbours that may be the farthest. */
    private <T> Optional<T> triple(Neighbourhood around, int i, int j, int k, Stage stage, Progress<T> progress) {
        double size = Math.sqrt(Math.max(around.square(i), Math.max(around.square(j), around.square(k))));
        if (size < SMALLEST_PATTERN_PIXELS) {
            return Optional.empty();
        }
        double tolerance = stage.tolerance() + CENTRE_PIXELS / size;
        double border = (1 - tolerance - BORDER_SHARE * stage.tolerance()) * size;
        Optional<T> found = Optional.empty();
        if (around.square(i) >= border * border) {
            found = lookUp(around, i, j, k, (float) tolerance, size, progress);
        }
        if (found.isEmpty() && around.square(j) >= border * border) {
            found = lookUp(around, j, i, k, (float) tolerance, size, progress);
        }
        if (found.isEmpty() && around.square(k) >= border * border) {
            found = lookUp(around, k, i, j, (float) tolerance, size, progress);
        }
        return found;
    }

    private <T> Optional<T> lookUp(
            Neighbourhood around, int far, int a, int b, float tolerance, double size, Progress<T> progress) {
        Optional<T> found = Optional.empty();
        for (int parity = 0; parity < 2 && found.isEmpty(); parity++) {
            boolean mirrored = parity == 1;
            if (hint.mirrored().isPresent() && hint.mirrored().get() != mirrored) {
                continue;
            }
            float[] code = new float[PatternCode.LENGTH];
            PatternCode.write(
                    around.px[far],
                    around.py[far],
                    around.px[a],
                    around.py[a],
                    around.px[b],
                    around.py[b],
                    mirrored,
                    code,
                    0);
            boolean exchanged = PatternCode.order(code, 0);
            int first = around.near[exchanged ? b : a];
            int second = around.near[exchanged ? a : b];
            int farStar = around.near[far];
            found = ask(code, around.star, farStar, first, second, mirrored, tolerance, size, progress);
            if (found.isEmpty() && Math.abs(code[0] - code[2]) < 2 * tolerance) {
                PatternCode.exchange(code, 0);
                found = ask(code, around.star, farStar, second, first, mirrored, tolerance, size, progress);
            }
        }
        return found;
    }

    private <T> Optional<T> ask(
            float[] code,
            int star,
            int far,
            int first,
            int second,
            boolean mirrored,
            float tolerance,
            double size,
            Progress<T> progress) {
        progress.lookups[0]++;
        // A pattern off the centre of a wide frame covers less sky than its pixels would there.
        double edge = Math.min(
                WIDEST_RAD,
                Math.atan(detections.halfDiagonal() * hint.scale().most().radians()));
        double least = hint.scale().least().radians() * size * square(Math.cos(edge)) * 0.95;
        double most = hint.scale().most().radians() * size * 1.05;
        List<Optional<T>> answer = new ArrayList<>(1);
        PatternIndex index = sky.index();
        MappedStars stars = sky.stars();
        sky.like(code, tolerance, pattern -> {
            int rank = index.rank(pattern, 0);
            int farRank = index.rank(pattern, 1);
            double apart = stars.direction(rank).distance(stars.direction(farRank));
            if (!answer.isEmpty() || apart < least || apart > most) {
                return;
            }
            progress.guesses[0]++;
            Optional<T> judged = progress.judge.judge(
                    new Hypothesis(
                            star, far, first, second, rank, farRank, index.rank(pattern, 2), index.rank(pattern, 3)),
                    mirrored,
                    progress.trials());
            if (judged.isPresent()) {
                answer.add(judged);
            }
        });
        return answer.isEmpty() ? Optional.empty() : answer.get(0);
    }

    private static double square(double value) {
        return value * value;
    }
}
