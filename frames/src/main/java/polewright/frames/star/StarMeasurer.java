package polewright.frames.star;

import java.util.Optional;

/** From a peak to a star: its place, light and shape, or nothing where it is no star. */
final class StarMeasurer {
    private static final double FREE_SHAPE_SIGNAL = 15;
    private static final double TELLING_SIGNAL = 8;

    private final CutoutMaker cutouts;
    private final StarShape usual;
    private final NoiseLaw law;
    private final Impostor impostor;

    StarMeasurer(CutoutMaker cutouts, StarShape usual, NoiseLaw law) {
        this.cutouts = cutouts;
        this.usual = usual;
        this.law = law;
        impostor = new Impostor(usual);
    }

    /** The star at a peak. */
    Optional<FoundStar> measure(Peak peak) {
        Cutout cutout = cutout(peak);
        return fit(cutout, peak).map(f -> star(f, peak));
    }

    /** What the fit of a bright star leaves over. */
    Optional<Leftover> leftover(Peak peak) {
        if (peak.height() < TELLING_SIGNAL) {
            return Optional.empty();
        }
        Cutout cutout = cutout(peak);
        return fit(cutout, peak).flatMap(f -> GaussianFit.leftover(cutout, f, law));
    }

    private Cutout cutout(Peak peak) {
        int reachX = 2 + (int) Math.ceil(3.5 * Math.sqrt(usual.xx()));
        int reachY = 2 + (int) Math.ceil(3.5 * Math.sqrt(usual.yy()));
        return cutouts.about(peak.x(), peak.y(), reachX, reachY);
    }

    private Optional<Fit> fit(Cutout cutout, Peak peak) {
        Optional<Fit> fixed = GaussianFit.of(cutout, peak.x(), peak.y(), usual, false, law);
        if (fixed.isEmpty()) {
            return Optional.empty();
        }
        Fit fit = fixed.get();
        if (peak.height() > FREE_SHAPE_SIGNAL) {
            Optional<Fit> free = GaussianFit.of(cutout, fit.x(), fit.y(), usual, true, law);
            if (free.isEmpty() || impostor.isMisshapen(free.get())) {
                return Optional.empty();
            }
            fit = free.get();
        }
        return impostor.isHot(cutout, peak, fit, law) ? Optional.empty() : Optional.of(fit);
    }

    private FoundStar star(Fit fit, Peak peak) {
        return new FoundStar(
                fit.x(),
                fit.y(),
                Math.sqrt(fit.varianceX()),
                Math.sqrt(fit.varianceY()),
                fit.flux(),
                peak.height(),
                fit.shape().fwhm(),
                fit.shape().elongation(),
                fit.shape().longAxisRad(),
                false);
    }
}
