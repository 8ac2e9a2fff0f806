package polewright.bench.frames;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import polewright.image.Frame;
import polewright.image.FrameFacts;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.FrameReader;
import polewright.image.match.FrameMatcher;
import polewright.image.match.MatchHint;
import polewright.image.match.MatchOutcome;
import polewright.image.match.MatchedFrame;
import polewright.image.match.PatternStore;
import polewright.image.match.ScaleRange;
import polewright.image.match.SkyPatch;
import polewright.image.star.StarFinder;
import polewright.image.star.StarList;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * From a FITS file to an attitude in a warmed-up program, stage by stage: the median of some rounds. The file is in
 * the operating system's cache; the atlas and the index of star patterns are loaded, as they are from the second
 * frame of a night on. The time to match a first frame, with its patterns mapped from their file, is printed
 * separately. A guide camera's small frames come once a second or faster, and the compiler is done with them after
 * about a minute: that many are processed before timing starts.
 */
public final class FramesSpeed {
    private static final int WARM_UP = 15;
    private static final int GUIDE_WARM_UP = 60;
    private static final int ROUNDS = 15;
    private static final int FRESH_ROUNDS = 5;
    private static final double SCALE_SHARE = 0.2;
    private static final double BYTES_PER_MEGABYTE = 1e6;
    private static final double MOST_MEGABYTES = 512 * 1.048_576;

    private static final Clue NOTHING = facts -> MatchHint.none(Knowledge.julianYear(time(facts)));
    private static final Clue POLE = facts -> NOTHING.of(facts)
            .withScale(ScaleRange.about(facts.scalePerPixel().orElseThrow(), SCALE_SHARE))
            .near(SkyPatch.aroundPole(true, Angle.ofDegrees(10)));

    private final StarAtlas atlas = StarAtlas.bundled();
    private final Path folder;

    private final PatternStore patterns;

    private FramesSpeed(Path folder) {
        this.folder = folder;
        patterns = new MappedPatterns(folder.resolve("patterns.bin"));
    }

    /** A clue about a frame. */
    @FunctionalInterface
    private interface Clue {
        MatchHint of(FrameFacts facts);
    }

    private enum Stage {
        READ,
        DECODE,
        FIND,
        MATCH,
        ATTITUDE
    }

    /** The time of each stage for one frame. */
    private record Round(Map<Stage, Double> millis, int starsFound, int starsMatched) {
        double total() {
            return millis.values().stream().mapToDouble(t -> t).sum();
        }
    }

    /** Folder of the {@link TimedFrames}, and which of them: {@code large} or {@code guide}. */
    public static void main(String[] args) throws IOException {
        FramesSpeed bench = new FramesSpeed(Path.of(args[0]));
        System.exit("large".equals(args[1]) ? bench.large() : bench.guide());
    }

    private int large() throws IOException {
        System.out.printf(
                Locale.ROOT,
                "median ms of %d rounds after %d     read  decode    find   match attitude   total  target%n",
                ROUNDS,
                WARM_UP);
        measure("24 Mpx, 2050 mm, pole hint", TimedFrames.LONG_TELESCOPE, POLE, WARM_UP, 600);
        double peak = peakMegabytes();
        measure("24 Mpx, 500 mm, pole hint", TimedFrames.SHORT_TELESCOPE, POLE, WARM_UP, 600);
        peak = Math.max(peak, peakMegabytes());
        double allowed = Runtime.getRuntime().maxMemory() / BYTES_PER_MEGABYTE;
        System.out.printf(
                Locale.ROOT,
                "heap allowed %.0f MB; peak in use with these frames %.0f MB (its parts added)%n",
                allowed,
                peak);
        Verdict verdict = new Verdict();
        verdict.require(allowed <= MOST_MEGABYTES, "frames of 24 megapixels are placed in a heap of 512 MB");
        return verdict.status();
    }

    private int guide() throws IOException {
        System.out.printf(Locale.ROOT, "guide frames: median ms of %d rounds after %d%n", ROUNDS, GUIDE_WARM_UP);
        measure("2 Mpx, pole hint", TimedFrames.GUIDE_NEAR_POLE, POLE, GUIDE_WARM_UP, 60);
        measure("2 Mpx, nothing known", TimedFrames.GUIDE_NEAR_POLE, NOTHING, GUIDE_WARM_UP, 1000);
        measure("2 Mpx elsewhere, nothing known", TimedFrames.GUIDE_ELSEWHERE, NOTHING, GUIDE_WARM_UP, 1000);
        return 0;
    }

    private void measure(String what, String file, Clue clue, int warmUp, double targetMillis) throws IOException {
        FrameMatcher matcher = new FrameMatcher(atlas, patterns);
        for (int i = 0; i < warmUp; i++) {
            round(file, clue, matcher);
        }
        forgetPeaks();
        List<Round> rounds = new ArrayList<>();
        for (int i = 0; i < ROUNDS; i++) {
            rounds.add(round(file, clue, matcher));
        }
        List<Round> fresh = new ArrayList<>();
        for (int i = 0; i < FRESH_ROUNDS; i++) {
            fresh.add(round(file, clue, new FrameMatcher(atlas, patterns)));
        }
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%-32s", what));
        for (Stage stage : Stage.values()) {
            line.append(String.format(Locale.ROOT, " %7.1f", median(rounds, stage)));
        }
        double total = new Spread(rounds.stream().mapToDouble(Round::total)).median();
        System.out.printf(
                Locale.ROOT,
                "%s   %7.1f %7.0f%s  stars found %d, matched %d; first match %.0f ms%n",
                line,
                total,
                targetMillis,
                total <= targetMillis ? " " : "!",
                rounds.get(0).starsFound(),
                rounds.get(0).starsMatched(),
                median(fresh, Stage.MATCH));
    }

    private static double median(List<Round> rounds, Stage stage) {
        return new Spread(rounds.stream().mapToDouble(r -> r.millis().get(stage))).median();
    }

    private Round round(String file, Clue clue, FrameMatcher matcher) throws IOException {
        long start = System.nanoTime();
        byte[] content = Files.readAllBytes(folder.resolve(file));
        long read = System.nanoTime();
        Frame frame = FrameReader.read(content, file, DecodeOptions.DEFAULT);
        long decoded = System.nanoTime();
        StarList stars = StarFinder.find(frame);
        long found = System.nanoTime();
        MatchOutcome outcome = matcher.match(stars, clue.of(frame.facts()));
        long matched = System.nanoTime();
        if (!(outcome instanceof MatchedFrame match)) {
            throw new IllegalStateException(file + " was not placed: nothing to time");
        }
        ObservingMoment moment = ObservingMoment.of(
                TimedFrames.SITE, SkyTime.of(time(frame.facts())), Weather.standardAt(TimedFrames.SITE.heightMetres()));
        CameraAttitude attitude = match.attitude(moment, atlas);
        long placed = System.nanoTime();
        if (attitude.boresight().getZ() < 0) {
            throw new IllegalStateException(file + " looks at the ground");
        }
        Map<Stage, Double> millis = Map.of(
                Stage.READ, (read - start) / 1e6,
                Stage.DECODE, (decoded - read) / 1e6,
                Stage.FIND, (found - decoded) / 1e6,
                Stage.MATCH, (matched - found) / 1e6,
                Stage.ATTITUDE, (placed - matched) / 1e6);
        return new Round(millis, stars.size(), match.starsMatched());
    }

    private static Instant time(FrameFacts facts) {
        return facts.middle().orElseThrow();
    }

    private static void forgetPeaks() {
        heap().forEach(MemoryPoolMXBean::resetPeakUsage);
    }

    /** The sum of the peaks of each part of the heap: no less than the heap ever occupied. */
    private static double peakMegabytes() {
        return heap().stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() / BYTES_PER_MEGABYTE;
    }

    private static List<MemoryPoolMXBean> heap() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .toList();
    }
}
