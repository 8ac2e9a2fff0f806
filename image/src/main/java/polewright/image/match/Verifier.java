package polewright.image.match;

import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Judges guesses about one frame: first by a quick check, then by extending the plate from the pattern over the whole
 * frame, then by the odds of what it explains.
 */
final class Verifier {
    private static final int QUICK_TRIED = 24;
    private static final double QUICK_NEEDED = 1.5;
    private static final double QUICK_SIGMAS = 2;
    private static final int GROWN_TRIED = 200;
    private static final int MOST_ROUNDS = 14;
    private static final double GROWTH = 1.6;
    // The error of a plate from four stars is the centring error divided by the pattern's size, plus the lens's
    // distortion.
    private static final double CENTRE_PIXELS = 1.5;
    private static final double BEND_NARROW = 0.002;
    private static final double BEND_WIDE = 0.025;
    private static final double WIDE_RAD = Math.toRadians(15);
    private static final double SCALE_SLACK = 0.03;

    private final Detections detections;
    private final MappedStars sky;
    private final MatchHint hint;
    private final PlateChoice choice;

    Verifier(Detections detections, MappedStars sky, MatchHint hint, PlateChoice choice) {
        this.detections = detections;
        this.sky = sky;
        this.hint = hint;
        this.choice = choice;
    }

    /** Judges a guess; empty if it explains too little for a closer check. */
    Optional<PlateChoice.Chosen> judge(Hypothesis guess, boolean mirrored) {
        return PatternPlate.of(guess, detections, sky, mirrored, hint.scale())
                .filter(this::matchesHint)
                .filter(plate -> passesQuickCheck(plate, guess))
                .flatMap(plate -> grown(plate, guess));
    }

    /** The same for a guess that has been checked against more stars than its own. */
    Optional<PlateChoice.Chosen> judgeClosely(Hypothesis guess, boolean mirrored) {
        return PatternPlate.of(guess, detections, sky, mirrored, hint.scale())
                .filter(this::matchesHint)
                .flatMap(plate -> grown(plate, guess));
    }

    private boolean matchesHint(Plate plate) {
        return hint.near()
                .map(patch -> Vector3D.angle(patch.direction(), plate.centre())
                        <= patch.radius().radians())
                .orElse(true);
    }

    /** Whether clearly more of the brightest detections have a star nearby than expected by chance. */
    private boolean passesQuickCheck(Plate plate, Hypothesis guess) {
        int tried = Math.min(detections.count(), QUICK_TRIED);
        // Stars much fainter than the pattern's own do not help to reject it.
        int below = Math.min(sky.count(), 3 * guess.rank0() + 60);
        PairedStars.Tolerance tolerance = new Surroundings(guess, detections).tolerance(bend(plate), Double.MAX_VALUE);
        PairedStars paired = PairedStars.of(plate, detections, sky, tried, below, tolerance);
        double starsPerPixel2 = sky.starsPerSteradian(below) / (plate.pixelsPerRadian() * plate.pixelsPerRadian());
        int others = 0;
        double byChance = 0;
        for (int i = 0; i < tried; i++) {
            if (guess.holdsDetection(i)) {
                continue;
            }
            double limit = tolerance.pixels(detections.x(i), detections.y(i));
            byChance += Math.min(1, starsPerPixel2 * Math.PI * limit * limit);
            if (paired.rankOf(i) >= 0) {
                others++;
            }
        }
        return others >= QUICK_NEEDED + byChance + QUICK_SIGMAS * Math.sqrt(byChance);
    }

    private static double bend(Plate plate) {
        double wide = Math.min(1, plate.radius().radians() / WIDE_RAD);
        return BEND_NARROW + BEND_WIDE * wide * wide;
    }

    /** Position of a pattern on the frame, and its size. */
    private record Surroundings(double x, double y, double size) {
        Surroundings(Hypothesis guess, Detections detections) {
            this(mean(guess, detections::x), mean(guess, detections::y), size(guess, detections));
        }

        private static double mean(Hypothesis guess, IntToDoubleFunction coordinate) {
            double sum = 0;
            for (int role = 0; role < Hypothesis.STARS; role++) {
                sum += coordinate.applyAsDouble(guess.detection(role));
            }
            return sum / Hypothesis.STARS;
        }

        private static double size(Hypothesis guess, Detections detections) {
            return Math.hypot(
                    detections.x(guess.detection1()) - detections.x(guess.detection0()),
                    detections.y(guess.detection1()) - detections.y(guess.detection0()));
        }

        /** The tolerance away from the pattern; 0 beyond {@code reach}. */
        PairedStars.Tolerance tolerance(double bend, double reach) {
            double slope = CENTRE_PIXELS / size + bend;
            return (px, py) -> {
                double distance = Math.hypot(px - x, py - y);
                return distance > reach ? 0 : CENTRE_PIXELS + slope * Math.max(0, distance - 0.3 * size);
            };
        }
    }

    private Optional<PlateChoice.Chosen> grown(Plate patternPlate, Hypothesis guess) {
        int tried = Math.min(detections.count(), GROWN_TRIED);
        int below = growthBelow(guess, tried);
        double diagonal = 2 * detections.halfDiagonal();
        Surroundings surroundings = new Surroundings(guess, detections);
        double reach = Math.max(2 * surroundings.size(), 0.15 * diagonal);
        Plate plate = patternPlate;
        double bend = bend(plate);
        int before = 0;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            boolean whole = reach >= diagonal;
            PairedStars paired =
                    PairedStars.of(plate, detections, sky, tried, below, surroundings.tolerance(bend, reach));
            if (paired.size() < Hypothesis.STARS) {
                return Optional.empty();
            }
            PlateModel model = growthModel(plate, paired.size(), whole);
            Optional<PlateFit> fit = PlateFit.of(plate, choice.forFit(paired, plate), model);
            if (fit.isEmpty()
                    || !hint.scale()
                            .widened(SCALE_SLACK)
                            .holds(fit.get().plate().scale().radians())) {
                return Optional.empty();
            }
            plate = fit.get().plate();
            // Fitted distortion needs no further allowance; what lies beyond does.
            if (model != PlateModel.PINHOLE || bend < 0.01) {
                bend *= 0.6;
            }
            if (whole && paired.size() <= before) {
                break;
            }
            before = whole ? paired.size() : 0;
            reach *= GROWTH;
        }
        return choice.over(plate, sky, below, tried);
    }

    private int growthBelow(Hypothesis guess, int tried) {
        int depth = Math.max(Math.max(guess.detection0(), guess.detection1()), 8);
        // The atlas's rank grows with the frame's, by the ratio of stars to detections.
        double times = Math.max(2, 1.5 * tried / (depth + 1.0));
        return (int) Math.min(sky.count(), times * (guess.rank0() + 40.0));
    }

    private static PlateModel growthModel(Plate plate, int stars, boolean whole) {
        if (stars < 10 || plate.radius().degrees() < 1) {
            return PlateModel.PINHOLE;
        }
        if (whole && stars >= PlateModel.CUBIC.fewestStars() + 20) {
            return PlateModel.CUBIC;
        }
        return PlateModel.RADIAL;
    }
}
