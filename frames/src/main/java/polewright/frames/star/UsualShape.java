package polewright.frames.star;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** The shape that most stars of a frame have, from the brightest that are not full. */
final class UsualShape {
    private static final int ENOUGH = 120;
    private static final int MOST_TRIED = 1500;
    // Beyond this a brighter star shows the shape no better: shapes differ over the frame.
    private static final double BRIGHT = 40;
    private static final double FAINTEST = 7;
    // Narrower than this fits a single pixel: a hot one, not light through a lens.
    private static final double NARROWEST_SIGMA = 0.5;

    private UsualShape() {}

    /** The middle value of each moment; the guess itself where no star is bright enough to tell. */
    static StarShape of(List<Peak> peaks, CutoutMaker cutouts, NoiseLaw law, StarShape guess) {
        List<Fit> fits = new ArrayList<>();
        int reach = 3 + (int) Math.ceil(4 * Math.sqrt(guess.majorVariance()));
        for (Peak peak : peaks.subList(0, Math.min(peaks.size(), MOST_TRIED))) {
            Cutout cutout = cutouts.about(peak.x(), peak.y(), reach, reach);
            if (!isWhole(cutout, peak)) {
                continue;
            }
            GaussianFit.of(cutout, peak.x(), peak.y(), guess, true, law)
                    .filter(f ->
                            f.signalToNoise() > FAINTEST && Math.sqrt(f.shape().minorVariance()) > NARROWEST_SIGMA)
                    .ifPresent(fits::add);
            if (fits.size() == ENOUGH) {
                break;
            }
        }
        if (fits.isEmpty()) {
            return guess;
        }
        return new StarShape(middle(fits, StarShape::xx), middle(fits, StarShape::xy), middle(fits, StarShape::yy));
    }

    /** Middle value of a moment, each star weighing by how well it shows it. */
    private static double middle(List<Fit> fits, ToDoubleFunction<StarShape> moment) {
        List<Fit> ordered = fits.stream()
                .sorted(Comparator.comparingDouble(f -> moment.applyAsDouble(f.shape())))
                .toList();
        double half = ordered.stream().mapToDouble(UsualShape::weight).sum() / 2;
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

    private static boolean isWhole(Cutout cutout, Peak peak) {
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
