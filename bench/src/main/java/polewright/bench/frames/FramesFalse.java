package polewright.bench.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.bench.TrialOptions;
import polewright.image.Frame;
import polewright.image.match.FrameMatcher;
import polewright.image.match.MatchHint;
import polewright.image.match.MatchOutcome;
import polewright.image.match.MatchedFrame;
import polewright.image.star.StarFinder;
import polewright.image.star.StarList;
import polewright.simulation.camera.FrameOfDots;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/**
 * Whether frames with nothing to match ever give a match: random dots, the stars of real frames moved to random
 * places, and skies half under cloud, which must be placed correctly or not at all.
 */
public final class FramesFalse {
    private static final int FRAMES = 1000;
    private static final int PER_CLOUDED = 5;
    private static final Instant AT = Instant.parse("2026-11-25T20:00:00Z");
    private static final int FEWEST_DOTS = 6;
    private static final int MOST_DOTS = 1000;

    private final StarAtlas sky = StrayedSky.ofAtlas();
    private final FrameMatcher matcher = new FrameMatcher(StarAtlas.bundled());
    private final List<Double> millis = new ArrayList<>();
    private final List<Integer> stars = new ArrayList<>();

    private FramesFalse() {}

    public static void main(String[] args) {
        System.exit(new FramesFalse().run(TrialOptions.of("frames-false", args, FRAMES)));
    }

    private int run(TrialOptions options) {
        System.out.printf(
                Locale.ROOT,
                "%d frames of no sky, seeds %d to %d, half of them scattered dots, half real stars shuffled; three in"
                        + " five with nothing known, one with the scale, one with place and scale%n",
                options.count(),
                options.first(),
                options.first() + options.count() - 1);
        int falsely = 0;
        for (long seed = options.first(); seed < options.first() + options.count(); seed++) {
            falsely += isMatched(seed) ? 1 : 0;
        }
        System.out.println("stars found:  " + new Spread(stars.stream().mapToDouble(n -> n)).inWords("stars"));
        System.out.println("giving up in: " + new Spread(millis.stream().mapToDouble(t -> t)).inWords("ms"));

        int clouded = Math.max(1, options.count() / PER_CLOUDED);
        int right = 0;
        int wrong = 0;
        for (long seed = options.first(); seed < options.first() + clouded; seed++) {
            Places places = underCloud(seed);
            right += places instanceof Places.Right ? 1 : 0;
            wrong += places instanceof Places.Wrong ? 1 : 0;
            if (places instanceof Places.Wrong) {
                System.out.printf(Locale.ROOT, "seed %d under cloud: %s%n", seed, places.inWords());
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%d frames half under cloud: %d placed rightly, %d not at all, %d wrongly%n",
                clouded,
                right,
                clouded - right - wrong,
                wrong);

        Verdict verdict = new Verdict();
        verdict.require(falsely == 0, "false matches where there is no sky: " + falsely + " (none)");
        verdict.require(wrong == 0, "wrong places under cloud: " + wrong + " (none)");
        return verdict.status();
    }

    private boolean isMatched(long seed) {
        RandomGenerator random = new SplittableRandom(seed);
        boolean scattered = seed % 2 == 0;
        Frame frame = scattered ? scattered(random) : shuffled(seed, random);
        StarList found = StarFinder.find(frame);
        // Changes every second seed, so that every kind of frame meets every kind of hint.
        Knowledge knowledge = switch ((int) (Math.floorDiv(seed, 2L) % 5)) {
            case 0 -> Knowledge.SCALE;
            case 1 -> Knowledge.PLACE_AND_SCALE;
            default -> Knowledge.NOTHING;
        };
        MatchHint hint = knowledge.hint(
                Directions.within(Vector3D.PLUS_K, Angle.HALF_TURN, random),
                frame.facts().scalePerPixel().orElseThrow(),
                AT,
                random);
        long start = System.nanoTime();
        MatchOutcome outcome = matcher.match(found, hint);
        millis.add((System.nanoTime() - start) / 1e6);
        stars.add(found.size());
        if (outcome instanceof MatchedFrame matched) {
            System.out.printf(
                    Locale.ROOT,
                    "seed %d FALSE: %s, %s, %d of %d stars, log odds %.1f%n",
                    seed,
                    scattered ? "scattered dots" : "shuffled stars",
                    knowledge,
                    matched.starsMatched(),
                    matched.starsFound(),
                    matched.logOdds());
            return true;
        }
        return false;
    }

    private static Frame scattered(RandomGenerator random) {
        RandomCamera camera = RandomCamera.ofWidth(Angle.ofDegrees(Draw.logBetween(0.5, 40, random)), random);
        SkyConditions sky = SkyConditions.COUNTRY.withSeeing(camera.seeing());
        int dots = (int) Math.round(Draw.logBetween(FEWEST_DOTS, MOST_DOTS, random));
        return FrameOfDots.scattered(camera.camera(), sky, AT, Duration.ofSeconds(2), dots, random);
    }

    private Frame shuffled(long seed, RandomGenerator random) {
        RandomFrame real = RandomFrame.of(sky, seed);
        return FrameOfDots.shuffled(real.exposure(), real.rendered().truth(), random);
    }

    private Places underCloud(long seed) {
        RandomFrame frame = RandomFrame.of(sky, seed, RandomFrame.Setting.CLOUD_OVER_HALF);
        return Places.of(
                matcher.match(StarFinder.find(frame.rendered().frame()), frame.hint()),
                frame.rendered().truth());
    }
}
