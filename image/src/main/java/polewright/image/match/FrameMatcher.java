package polewright.image.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.star.FoundStar;
import polewright.image.star.StarList;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;

/**
 * Identifies the stars of a frame in the atlas, wherever it was pointed.
 *
 * <p>Each star of the frame and three brighter ones near it form a pattern, whose code is looked up among those of the
 * atlas (see {@link PatternCode}). A similar code proposes a plate, which {@link Verifier} judges by {@link Odds}.
 * Patterns are tried from the brightest star on, with few neighbours and small tolerances first. The work is bounded by
 * the numbers of stars, patterns and guesses, so that a frame without stars also terminates.
 *
 * <p>The patterns of the whole sky are memory-mapped from their store and serve every frame. Without a store, the
 * patterns of a hint's neighbourhood are computed in hundredths of a second; for a frame without a hint those of the
 * whole sky are computed, in seconds, and then stored. The last few indices are cached for the next frame. There is no
 * other state; instances may be shared between threads.
 */
public final class FrameMatcher {
    /** Fewer stars cannot be distinguished from a chance match. */
    public static final int FEWEST_STARS = 6;

    private static final int MOST_DETECTIONS = 1500;
    private static final int MOST_GUESSES = 40_000;
    // For a field with five or six atlas stars; anything fainter may not be a star.
    private static final int LEAST_OF_FEW = 6;
    // An index of the whole sky at one epoch takes 32 MB of heap; those of neighbourhoods a few MB each.
    private static final int MOST_INDICES = 5;

    private final StarAtlas atlas;
    private final PatternStore store;
    private final AtomicReference<Optional<StoredPatterns>> wholeSky = new AtomicReference<>(Optional.empty());
    private final AtomicReference<List<IndexedSky>> lastIndices = new AtomicReference<>(List.of());

    /** Stores nothing beyond its own lifetime. */
    public FrameMatcher(StarAtlas atlas) {
        this(atlas, PatternStore.NONE);
    }

    /** With a store for the patterns of the whole sky; opens them, or notes that there are none. */
    public FrameMatcher(StarAtlas atlas, PatternStore store) {
        this.atlas = atlas;
        this.store = store;
        wholeSky.set(store.kept(atlas));
    }

    /** Matches the stars of one frame. */
    public MatchOutcome match(StarList list, MatchHint hint) {
        if (list.size() < FEWEST_STARS) {
            return new Unmatched(
                    list.size(),
                    list.size() == 0
                            ? "it shows no stars"
                            : list.size() == 1 ? "it shows only 1 star" : "it shows only " + list.size() + " stars",
                    "expose longer, focus, or take the cap off");
        }
        Detections detections = new Detections(list, MOST_DETECTIONS);
        for (PatternSearch.Stage stage : PatternSearch.STAGES) {
            for (SearchDepth depth : SearchDepth.of(detections, hint, atlas.size())) {
                MatchHint narrower = hint.withScale(depth.scale());
                SearchedSky sky = index(hint, detections, depth.stars()).searched(narrower, detections, depth.stars());
                Optional<MatchedFrame> matched = search(list, detections, sky, narrower, stage);
                if (matched.isPresent()) {
                    return matched.get();
                }
            }
        }
        return fewStars(list, detections, hint)
                .map(MatchOutcome.class::cast)
                .orElseGet(() -> unmatched(list, List.of(hint), List.of(hint)));
    }

    /**
     * The reason why a frame was not matched: the atlas may have too few stars where it was searched.
     *
     * @param tried every hint used
     * @param widest those of the last search, which differ only in the part of the sky
     */
    public Unmatched unmatched(StarList list, List<MatchHint> tried, List<MatchHint> widest) {
        return tried.stream()
                .flatMap(hint -> ThinAtlas.of(atlas, list.size(), list.width(), list.height(), hint).stream())
                .findFirst()
                .orElseGet(() -> Unmatched.anywhere(list.size(), widest));
    }

    /** If position and scale are nearly known, fewer stars are enough. */
    private Optional<MatchedFrame> fewStars(StarList list, Detections detections, MatchHint hint) {
        if (!PairSearch.isFor(detections, hint)) {
            return Optional.empty();
        }
        SearchedSky sky = index(hint, detections, atlas.size()).searched(hint, detections, atlas.size());
        PlateChoice choice = new PlateChoice(detections, atlas, LEAST_OF_FEW);
        Verifier verifier = new Verifier(detections, sky.stars(), hint, choice);
        return new PairSearch(detections, sky, hint)
                .firstThat((guess, mirrored, trials) -> verifier.judgeClosely(guess, mirrored)
                        .filter(chosen -> chosen.logOdds() - Math.log(trials) >= Odds.LEAST_LOG_OF_FEW)
                        .flatMap(chosen -> matched(list, detections, chosen, choice, hint, Math.log(trials))));
    }

    /** The smallest cached index that serves, or a new one. */
    private IndexedSky index(MatchHint hint, Detections detections, int depth) {
        List<IndexedSky> atHand = Objects.requireNonNull(lastIndices.get());
        Optional<IndexedSky> serving = atHand.stream()
                .filter(sky -> sky.serves(hint, detections, depth))
                .min(Comparator.comparingInt(sky -> sky.patterns().patternCount()));
        if (serving.isPresent()) {
            return serving.get();
        }
        IndexedSky fresh = fresh(hint, detections, depth);
        lastIndices.set(Stream.concat(Stream.of(fresh), atHand.stream())
                .limit(MOST_INDICES)
                .toList());
        return fresh;
    }

    private IndexedSky fresh(MatchHint hint, Detections detections, int depth) {
        boolean isAtHand = Objects.requireNonNull(wholeSky.get()).isPresent();
        if (!StoredPatterns.serve(hint.julianYear()) || (hint.near().isPresent() && !isAtHand)) {
            return IndexedSky.of(atlas, hint, detections, depth);
        }
        return IndexedSky.whole(atlas, wholeSky(), hint.julianYear());
    }

    private StoredPatterns wholeSky() {
        synchronized (wholeSky) {
            return Objects.requireNonNull(wholeSky.get()).orElseGet(() -> {
                StoredPatterns patterns = StoredPatterns.computed(atlas);
                wholeSky.set(Optional.of(patterns));
                store.keep(patterns);
                return patterns;
            });
        }
    }

    private Optional<MatchedFrame> search(
            StarList list, Detections detections, SearchedSky sky, MatchHint hint, PatternSearch.Stage stage) {
        PlateChoice choice = new PlateChoice(detections, atlas, PlateChoice.LEAST_TRUSTED);
        Verifier verifier = new Verifier(detections, sky.stars(), hint, choice);
        PatternSearch search = new PatternSearch(detections, sky, hint, MOST_GUESSES);
        return search.firstThat(
                stage,
                (guess, mirrored, trials) -> verifier.judge(guess, mirrored)
                        .filter(chosen -> chosen.logOdds() - Math.log(trials) >= Odds.LEAST_LOG)
                        .flatMap(chosen -> matched(list, detections, chosen, choice, hint, Math.log(trials))));
    }

    /** With all the atlas's stars on the frame, however few the search needed. */
    private Optional<MatchedFrame> matched(
            StarList list,
            Detections detections,
            PlateChoice.Chosen found,
            PlateChoice choice,
            MatchHint hint,
            double logTrials) {
        Plate plate = found.fit().plate();
        double radius = Math.min(1.4, 1.05 * plate.radius().radians());
        StarField field = atlas.starsWithin(
                plate.rightAscension(),
                plate.declination(),
                new Angle(radius),
                faintest(found, detections),
                hint.julianYear());
        MappedStars sky = new MappedStars(field, field.size(), radius);
        return choice.over(plate, sky, field.size(), detections.count())
                .map(all -> matchedFrame(list, field, all, logTrials));
    }

    private static MatchedFrame matchedFrame(StarList list, StarField field, PlateChoice.Chosen all, double logTrials) {
        Plate plate = all.fit().plate();
        List<StarPair> pairs = new ArrayList<>();
        double square = 0;
        for (int detection : all.stars().paired()) {
            FoundStar star = list.stars().get(detection);
            int rank = all.stars().rankOf(detection);
            Vector3D direction = field.direction(rank);
            double off = Math.toDegrees(plate.toSky(star.x(), star.y()).distance(direction)) * 3600;
            square += off * off;
            double sigma = all.fitted().sigmaPixels().at(pairs.size());
            pairs.add(new StarPair(star, field.number(rank), direction, field.magnitude(rank), sigma, off));
        }
        return new MatchedFrame(
                plate,
                all.model(),
                all.fit().covariance().times(LensScatter.factor(all.fit(), all.fitted(), all.model())),
                pairs,
                list.size(),
                Math.sqrt(square / pairs.size()),
                all.logOdds() - logTrials);
    }

    /** Magnitude of the faintest detections, from the paired ones, with a margin for their scatter. */
    private static double faintest(PlateChoice.Chosen found, Detections detections) {
        int[] paired = found.stars().paired();
        double[] zeroPoints = new double[paired.length];
        for (int i = 0; i < paired.length; i++) {
            zeroPoints[i] = found.stars().magnitude(paired[i]) + 2.5 * Math.log10(detections.flux(paired[i]));
        }
        Arrays.sort(zeroPoints);
        double faintestFlux = detections.flux(detections.count() - 1);
        return zeroPoints[paired.length / 2] - 2.5 * Math.log10(faintestFlux) + 1;
    }
}
