package polewright.image.star;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import polewright.image.Frame;

/**
 * Finds the stars of a frame without prior knowledge of its optics, its detector or the camera's motion.
 *
 * <pre>
 *   Frame ─▶ BackgroundMesh ─▶ PeakFinder (a narrow filter) ─▶ TrailField, PsfEstimator: the PSF
 *         ─▶ PeakFinder (matched to that PSF) ─▶ StarMeasurer (a fit of each, with the NoiseModel) ─▶ StarList
 * </pre>
 */
public final class StarFinder {
    private static final StarShape SCOUT = StarShape.round(1.0);
    // No star's image, summed over pixels, is sharper: light through a lens that falls in the middle of a pixel.
    private static final StarShape SHARPEST = StarShape.round(0.5);
    private static final int MOST_BLOBS = 60;
    // If hot pixels are this large a fraction of the sample, those of the whole frame must be found.
    private static final double MANY_HOT = 0.2;
    private static final int MOST_ROUNDS = 4;
    private static final double NEAR_ENOUGH = 0.15;
    // Bright stars determine the noise model best; each faint one contributes little.
    private static final double NOISE_MODEL_SIGNAL = 20;
    private static final int FIRST_FOR_NOISE_MODEL = 40;
    private static final int BRIGHT_FOR_NOISE_MODEL = 120;
    private static final int FAINT_FOR_NOISE_MODEL = 400;
    private static final int CHUNK = 512;
    // Peaks to examine per star wanted, before a frame is given up as full of something else.
    private static final int TRIES = 6;
    // This far above the threshold, a little signal can be lost without losing a star.
    private static final double MANY_SIGNAL = 2;

    private final Frame frame;
    private final SearchSettings settings;
    private final BackgroundMesh mesh;

    private StarFinder(Frame frame, SearchSettings settings) {
        this.frame = frame;
        this.settings = settings;
        mesh = BackgroundMesh.of(frame, frame.saturation());
    }

    /** The stars of a frame, brightest first; empty if it has none. */
    public static StarList find(Frame frame) {
        return find(frame, SearchSettings.USUAL);
    }

    /** The stars of a frame, with these settings. */
    public static StarList find(Frame frame, SearchSettings settings) {
        StarFinder search = new StarFinder(frame, settings);
        return new StarList(frame.width(), frame.height(), search.mesh.isBlank() ? List.of() : search.stars());
    }

    private List<FoundStar> stars() {
        PsfEstimate usual = new PsfEstimate(SCOUT, Double.POSITIVE_INFINITY, Optional.empty());
        HotPixels hot = HotPixels.none(frame);
        PeakFinder finder = new PeakFinder(frame, mesh, hot);
        PeakFinder.Peaks found = finder.scout(new PointFilter(SCOUT.sigma()), settings.threshold());
        float full = Math.min(frame.saturation(), SaturationLevel.of(frame, found.peaks()));
        hot = HotPixels.among(found.peaks(), frame, new IsolatedPixels(cutouts(found, full, hot), SHARPEST));
        if (finder.isLarge() && hot.count() > MANY_HOT * found.peaks().size()) {
            found = finder.find(new PointFilter(SCOUT.sigma()), Optional.empty(), settings.threshold());
            hot = HotPixels.among(found.peaks(), frame, new IsolatedPixels(cutouts(found, full, hot), SHARPEST));
        }
        found = found.without(hot);
        finder = new PeakFinder(frame, mesh, hot);
        boolean many = hasMany(found);
        Optional<TrailField> trail =
                TrailField.of(Blob.of(found.peaks(), frame, mesh, MOST_BLOBS), frame.width(), frame.height());
        if (trail.isPresent()) {
            usual = new PsfEstimate(usual.point(), usual.beta(), trail);
            found = peaks(finder, usual, many);
        }
        usual = converged(usual, found.peaks(), cutouts(found, full, hot));
        found = peaks(finder, usual, many);
        PsfEstimate closer = converged(usual, found.peaks(), cutouts(found, full, hot));
        if (!isNear(closer, usual)) {
            found = peaks(finder, closer, many);
        }
        usual = closer;
        CutoutMaker cutouts = cutouts(found, full, hot);
        IsolatedPixels lone = new IsolatedPixels(cutouts, usual.point());
        List<Peak> peaks = found.peaks().parallelStream()
                .filter(p -> p.height() >= settings.threshold() * cutouts.sharedNoise())
                .filter(p -> lone.find(p) < 0)
                .map(p -> new Peak(p.x(), p.y(), (float) (p.height() / cutouts.sharedNoise())))
                .toList();
        return measured(peaks, cutouts, Wings.fitted(peaks, cutouts, usual));
    }

    /** The PSF estimated from the peaks, iterated until it no longer changes. */
    private static PsfEstimate converged(PsfEstimate guess, List<Peak> peaks, CutoutMaker cutouts) {
        PsfEstimate usual = guess;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            PsfEstimate closer = PsfEstimator.of(peaks, cutouts, usual);
            if (isNear(closer, usual)) {
                return closer;
            }
            usual = closer;
        }
        return usual;
    }

    private static boolean isNear(PsfEstimate one, PsfEstimate other) {
        return Math.abs(Math.log(one.point().sigma() / other.point().sigma())) < NEAR_ENOUGH;
    }

    /** Whether there are more stars well above the threshold than will be returned. */
    private boolean hasMany(PeakFinder.Peaks scouted) {
        List<Peak> peaks = scouted.peaks();
        return peaks.size() > settings.most()
                && peaks.get(settings.most()).height() > MANY_SIGNAL * settings.threshold();
    }

    private PeakFinder.Peaks peaks(PeakFinder finder, PsfEstimate usual, boolean many) {
        double sigma = usual.point().sigma();
        return finder.findStars(
                sigma,
                usual.trail().map(t -> new TrailFilter(t, sigma, frame.width(), frame.height())),
                settings.threshold(),
                many);
    }

    private CutoutMaker cutouts(PeakFinder.Peaks found, float full, HotPixels hot) {
        return new CutoutMaker(frame, mesh, full, hot, Math.max(1, found.noise()));
    }

    private List<FoundStar> measured(List<Peak> peaks, CutoutMaker cutouts, PsfEstimate usual) {
        NoiseModel first =
                noiseModel(peaks, FIRST_FOR_NOISE_MODEL, new StarMeasurer(cutouts, usual, NoiseModel.SKY_ALONE));
        boolean bright = peaks.size() > BRIGHT_FOR_NOISE_MODEL
                && peaks.get(BRIGHT_FOR_NOISE_MODEL).height() > NOISE_MODEL_SIGNAL;
        NoiseModel noiseModel = noiseModel(
                peaks,
                bright ? BRIGHT_FOR_NOISE_MODEL : FAINT_FOR_NOISE_MODEL,
                new StarMeasurer(cutouts, usual, first));
        StarMeasurer measurer = new StarMeasurer(cutouts, usual, noiseModel);
        List<MeasuredStar> measured = new ArrayList<>();
        int end = (int) Math.min(peaks.size(), (long) TRIES * settings.most());
        for (int from = 0; from < end && measured.size() < settings.most(); from += CHUNK) {
            measured.addAll(peaks.subList(from, Math.min(end, from + CHUNK)).parallelStream()
                    .map(p -> measurer.measure(p, List.of()))
                    .flatMap(Optional::stream)
                    .toList());
        }
        List<MeasuredStar> apart = CloseStars.apart(CloseStars.merged(measured), measurer);
        Blends blends = new Blends(apart, (double) frame.width() * frame.height());
        return apart.parallelStream()
                .map(blends::judged)
                .sorted(Comparator.comparingDouble(FoundStar::flux).reversed())
                .limit(settings.most())
                .toList();
    }

    private static NoiseModel noiseModel(List<Peak> peaks, int most, StarMeasurer measurer) {
        return NoiseModel.of(peaks.stream().limit(most).toList().parallelStream()
                .map(measurer::leftover)
                .flatMap(Optional::stream)
                .toList());
    }
}
