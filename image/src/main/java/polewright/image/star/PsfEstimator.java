package polewright.image.star;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Estimates the typical PSF of a frame from its brightest unsaturated stars. */
final class PsfEstimator {
    private static final int ENOUGH = 40;
    private static final int MOST_TRIED = 1500;
    // Beyond this a brighter star gives no better shape: shapes vary over the frame.
    private static final double BRIGHT = 40;
    private static final double FAINTEST = 7;
    // Anything narrower is a single hot pixel that did not pass a lens.
    private static final double NARROWEST_SIGMA = 0.5;

    // Anything longer without a common trail is an artefact.
    private static final double LONGEST = 3;
    // Wider stars are so far out of focus that they are rings.
    private static final double WIDEST_SIGMA = 10;

    private PsfEstimator() {}

    /** The median of each moment; the guess itself if no star is bright enough. */
    static PsfEstimate of(List<Peak> peaks, CutoutMaker cutouts, PsfEstimate guess) {
        LinearArtefact ridge = new LinearArtefact(cutouts.frame(), cutouts.mesh(), guess);
        List<Fit> fits = new ArrayList<>();
        int end = Math.min(peaks.size(), MOST_TRIED);
        for (int from = 0; from < end && fits.size() < ENOUGH; from += ENOUGH) {
            peaks.subList(from, Math.min(end, from + ENOUGH)).parallelStream()
                    .map(p -> fit(p, cutouts, guess, ridge))
                    .flatMap(Optional::stream)
                    .toList()
                    .forEach(fits::add);
        }
        if (fits.isEmpty()) {
            return guess;
        }
        if (guess.trail().isPresent()) {
            double sigma = Math.sqrt(middle(fits, StarShape::minorVariance));
            return new PsfEstimate(
                    StarShape.round(sigma), guess.beta(), guess.trail().map(t -> t.refined(fits)));
        }
        return new PsfEstimate(
                new StarShape(middle(fits, StarShape::xx), middle(fits, StarShape::xy), middle(fits, StarShape::yy)),
                guess.beta(),
                Optional.empty());
    }

    private static Optional<Fit> fit(Peak peak, CutoutMaker cutouts, PsfEstimate guess, LinearArtefact ridge) {
        StarShape shape = guess.shapeAt(peak.x(), peak.y());
        Cutout cutout = cutouts.about(
                peak.x(),
                peak.y(),
                3 + (int) Math.ceil(4 * Math.sqrt(shape.xx())),
                3 + (int) Math.ceil(4 * Math.sqrt(shape.yy())));
        if (!isWhole(cutout, peak)) {
            return Optional.empty();
        }
        Optional<StarImage.Trail> trail = guess.trailAt(peak.x(), peak.y());
        Optional<Fit> fit = trail.isPresent()
                ? TrailFit.of(cutout, peak.x(), peak.y(), trail.get(), true, NoiseModel.SKY_ALONE)
                : PointFit.of(cutout, peak.x(), peak.y(), shape, true, guess.beta(), NoiseModel.SKY_ALONE);
        return fit.filter(f -> f.signalToNoise() > FAINTEST
                && Math.sqrt(f.shape().minorVariance()) > NARROWEST_SIGMA
                && (trail.isPresent() || f.shape().elongation() < LONGEST)
                && Math.sqrt(f.shape().minorVariance()) < WIDEST_SIGMA
                && !f.rivals().hotPixelsTellItBetter()
                && !ridge.passesThrough(f.x(), f.y(), f.image().height()));
    }

    /** Weighted median of a moment, each star weighted by its accuracy. */
    private static double middle(List<Fit> fits, ToDoubleFunction<StarShape> moment) {
        List<Fit> ordered = fits.stream()
                .sorted(Comparator.comparingDouble(f -> moment.applyAsDouble(f.shape())))
                .toList();
        double half = ordered.stream().mapToDouble(PsfEstimator::weight).sum() / 2;
        double sum = 0;
        for (Fit fit : ordered) {
            sum += weight(fit);
            if (sum >= half) {
                return moment.applyAsDouble(fit.shape());
            }
        }
        return moment.applyAsDouble(ordered.get(ordered.size() - 1).shape());
    }

    private static double weight(Fit fit) {
        double signal = Math.min(BRIGHT, fit.signalToNoise());
        return signal * signal;
    }

    /** Whether a peak and its neighbours are all usable. */
    static boolean isWhole(Cutout cutout, Peak peak) {
        for (int y = peak.y() - 2; y <= peak.y() + 2; y++) {
            for (int x = peak.x() - 2; x <= peak.x() + 2; x++) {
                if (!cutout.contains(x, y) || !cutout.counts(x - cutout.left(), y - cutout.top())) {
                    return false;
                }
            }
        }
        return true;
    }
}
