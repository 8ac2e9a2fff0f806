package polewright.bench.frames;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import polewright.bench.TrialOptions;
import polewright.image.match.FrameMatcher;
import polewright.image.match.MatchOutcome;
import polewright.image.match.MatchedFrame;
import polewright.image.star.StarFinder;
import polewright.image.star.StarList;
import polewright.simulation.fits.FitsFile;
import polewright.sky.atlas.StarAtlas;

/**
 * How many frames with enough stars are placed, and whether any is placed wrongly: from pixels to stars to sky, on
 * frames of any camera and any place.
 */
public final class FramesSuccess {
    private static final int FRAMES = 1000;
    private static final double LEAST_SUCCESS = 0.995;
    private static final double[] WIDTH_EDGES_DEG = {0.5, 1, 2, 5, 10, 20, 40.01};

    private final StarAtlas sky = StrayedSky.ofAtlas();
    private final FrameMatcher matcher = new FrameMatcher(StarAtlas.bundled());

    private FramesSuccess() {}

    /** One frame and its result. */
    private record Trial(
            long seed,
            Knowledge knowledge,
            double widthDeg,
            boolean standing,
            int catalogueStars,
            int found,
            StarTruth.Kinds brightest,
            Places places,
            double findMillis,
            double matchMillis) {
        boolean right() {
            return places instanceof Places.Right;
        }

        String describe() {
            return String.format(
                    Locale.ROOT,
                    "seed %d  %s  %.2f deg wide%s  %s  catalogue stars %d  found %d  of the brightest 50: %s  %.0f ms",
                    seed,
                    places.inWords(),
                    widthDeg,
                    standing ? " standing" : "",
                    knowledge,
                    catalogueStars,
                    found,
                    brightest,
                    matchMillis);
        }
    }

    public static void main(String[] args) throws IOException {
        TrialOptions options = TrialOptions.orOne("frames-success", args, FRAMES);
        FramesSuccess bench = new FramesSuccess();
        if (options.single()) {
            bench.describe(options);
            return;
        }
        System.exit(bench.run(options));
    }

    private int run(TrialOptions options) {
        System.out.printf(
                Locale.ROOT,
                "%d frames, seeds %d to %d; fields 0.5 to 40 degrees, %d or more catalogue stars above S/N %.0f%n",
                options.count(),
                options.first(),
                options.first() + options.count() - 1,
                RandomFrame.FEWEST_STARS,
                RandomFrame.SIGNAL_TO_NOISE);
        trial(RandomFrame.of(sky, options.first()));
        List<Trial> trials = new ArrayList<>();
        for (long seed = options.first(); seed < options.first() + options.count(); seed++) {
            Trial trial = trial(RandomFrame.of(sky, seed));
            trials.add(trial);
            if (!trial.right()) {
                System.out.println(trial.describe());
            }
        }
        report(trials);
        long right = trials.stream().filter(Trial::right).count();
        long wrong =
                trials.stream().filter(t -> t.places() instanceof Places.Wrong).count();
        Verdict verdict = new Verdict();
        verdict.require(
                right >= LEAST_SUCCESS * trials.size(),
                String.format(
                        Locale.ROOT,
                        "placed within %.0f pixels: %.2f %% (at least %.1f %%)",
                        Places.RIGHT_WITHIN_PIXELS,
                        100.0 * right / trials.size(),
                        100 * LEAST_SUCCESS));
        verdict.require(wrong == 0, "placed wrongly: " + wrong + " (none)");
        return verdict.status();
    }

    private Trial trial(RandomFrame frame) {
        long start = System.nanoTime();
        StarList found = StarFinder.find(frame.rendered().frame());
        long foundAt = System.nanoTime();
        MatchOutcome outcome = matcher.match(found, frame.hint());
        long matchedAt = System.nanoTime();
        StarTruth truth = frame.stars();
        return new Trial(
                frame.seed(),
                frame.knowledge(),
                frame.width().degrees(),
                frame.standing(),
                truth.standingOut(RandomFrame.SIGNAL_TO_NOISE),
                found.size(),
                truth.kinds(found, 50),
                Places.of(outcome, frame.rendered().truth()),
                (foundAt - start) / 1e6,
                (matchedAt - foundAt) / 1e6);
    }

    private static void report(List<Trial> trials) {
        Map<Knowledge, List<Trial>> byKnowledge = new EnumMap<>(Knowledge.class);
        trials.forEach(t -> byKnowledge
                .computeIfAbsent(t.knowledge(), k -> new ArrayList<>())
                .add(t));
        byKnowledge.forEach((knowledge, some) -> line(knowledge.toString(), some));
        for (int i = 1; i < WIDTH_EDGES_DEG.length; i++) {
            double least = WIDTH_EDGES_DEG[i - 1];
            double most = WIDTH_EDGES_DEG[i];
            line(
                    String.format(Locale.ROOT, "%.1f to %.0f degrees wide", least, most),
                    trials.stream()
                            .filter(t -> t.widthDeg() >= least && t.widthDeg() < most)
                            .toList());
        }
        line("standing still", trials.stream().filter(Trial::standing).toList());
        line(
                "15 to 25 catalogue stars",
                trials.stream().filter(t -> t.catalogueStars() <= 25).toList());
        System.out.println(
                "finding stars: " + new Spread(trials.stream().mapToDouble(Trial::findMillis)).inWords("ms"));
        System.out.println(
                "matching:      " + new Spread(trials.stream().mapToDouble(Trial::matchMillis)).inWords("ms"));
    }

    private static void line(String what, List<Trial> trials) {
        System.out.printf(
                Locale.ROOT,
                "%-28s %4d frames, %4d placed; matching %s%n",
                what,
                trials.size(),
                trials.stream().filter(Trial::right).count(),
                new Spread(trials.stream().mapToDouble(Trial::matchMillis)).inWords("ms"));
    }

    private void describe(TrialOptions options) throws IOException {
        RandomFrame frame = RandomFrame.of(sky, options.first());
        Trial trial = trial(frame);
        System.out.println(trial.describe());
        System.out.println("camera  " + frame.exposure().camera());
        System.out.println("sky     " + frame.exposure().sky());
        System.out.printf(
                Locale.ROOT,
                "taken   %s, %.3f s, from %s; images %.2f px wide, %.2f\" a pixel%n",
                frame.exposure().middle(),
                frame.exposure().length().toNanos() / 1e9,
                frame.exposure().site(),
                Pixels.of(frame.exposure()).fwhmPixels(),
                frame.rendered().truth().scalePerPixel().arcseconds());
        System.out.printf(
                Locale.ROOT,
                "centre  RA %.4f Dec %.4f, up %.2f, mirrored %s%n",
                frame.rendered().truth().centre().rightAscension().degrees(),
                frame.rendered().truth().centre().declination().degrees(),
                frame.rendered().truth().roll().degrees(),
                frame.rendered().truth().mirrored());
        System.out.println("hint    " + frame.hint());
        for (int brightest : new int[] {10, 20, 50, 100, 400}) {
            System.out.println("of the brightest " + brightest + " found: "
                    + frame.stars().kinds(StarFinder.find(frame.rendered().frame()), brightest));
        }
        if (matcher.match(StarFinder.find(frame.rendered().frame()), frame.hint()) instanceof MatchedFrame matched) {
            System.out.printf(
                    Locale.ROOT,
                    "matched %d of %d stars, %s, rms %.2f\", log odds %.1f%n",
                    matched.starsMatched(),
                    matched.starsFound(),
                    matched.model(),
                    matched.rmsArcsec(),
                    matched.logOdds());
        }
        for (Path file : options.file().stream().toList()) {
            Files.write(file, FitsFile.of(frame.rendered().frame()));
            System.out.println("written " + file);
        }
    }
}
