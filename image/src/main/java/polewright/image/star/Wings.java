package polewright.image.star;

import java.util.List;
import java.util.Optional;

/** Fits the wings of a frame's stars beyond a Gaussian's, from the brightest unsaturated ones. */
final class Wings {
    private static final double[] BETAS = {Double.POSITIVE_INFINITY, 12, 7, 5, 4, 3.5, 3, 2.5};
    private static final double BRIGHT = 50;
    private static final int ENOUGH = 24;
    private static final int FEWEST = 3;
    private static final double REACH_SIGMAS = 4;
    // Worse than any real fit.
    private static final double NO_FIT = 50;

    private Wings() {}

    /** The PSF with the profile and shape that have the smallest residuals; itself if no star is usable. */
    static PsfEstimate fitted(List<Peak> peaks, CutoutMaker cutouts, PsfEstimate usual) {
        ArtefactFilter impostor = new ArtefactFilter(usual);
        List<Peak> telling = usual.trail().isPresent()
                ? List.of()
                : peaks.stream()
                        .takeWhile(p -> p.height() > BRIGHT)
                        .filter(p -> fit(p, cutouts, usual)
                                .filter(f -> !impostor.isTooSharp(f)
                                        && !impostor.isMisaligned(f)
                                        && !f.rivals().hotPixelsTellItBetter())
                                .isPresent())
                        .limit(ENOUGH)
                        .toList();
        if (telling.size() < FEWEST) {
            return usual;
        }
        PsfEstimate best = usual;
        double least = leftOver(telling, cutouts, usual);
        for (double beta : BETAS) {
            PsfEstimate trial = new PsfEstimate(usual.point(), beta, usual.trail());
            double left = leftOver(telling, cutouts, trial);
            if (left > least) {
                break;
            }
            least = left;
            best = trial;
        }
        return best.beta() == usual.beta() ? usual : PsfEstimator.of(peaks, cutouts, best);
    }

    /** Sum over the stars of the logarithm of chi square, so that none dominates. */
    private static double leftOver(List<Peak> peaks, CutoutMaker cutouts, PsfEstimate usual) {
        return peaks.parallelStream()
                .mapToDouble(p ->
                        fit(p, cutouts, usual).map(f -> Math.log(f.chiSquare())).orElse(NO_FIT))
                .boxed()
                .toList()
                .stream()
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    private static Optional<Fit> fit(Peak peak, CutoutMaker cutouts, PsfEstimate usual) {
        StarShape shape = usual.point();
        Cutout cutout = cutouts.about(
                peak.x(),
                peak.y(),
                2 + (int) Math.ceil(REACH_SIGMAS * Math.sqrt(shape.xx())),
                2 + (int) Math.ceil(REACH_SIGMAS * Math.sqrt(shape.yy())));
        return PsfEstimator.isWhole(cutout, peak)
                ? PointFit.of(cutout, peak.x(), peak.y(), shape, true, usual.beta(), NoiseModel.SKY_ALONE)
                : Optional.empty();
    }
}
