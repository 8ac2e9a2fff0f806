package polewright.image.star;

import java.util.List;
import java.util.Optional;

/** Measures the star at a peak: its position, light and shape; empty if it is not a star. */
final class StarMeasurer {
    private static final double FREE_SHAPE_SIGNAL = 15;
    private static final double TELLING_SIGNAL = 8;
    private static final double REACH_SIGMAS = 3.5;
    // The centre of the wings may differ from that of a hidden core by about this fraction of its radius.
    private static final double CORE_OFFSET_SIGMA = 0.01;
    private static final double SURROUND = 3;
    // Wings that are much longer than those of others are a satellite's trail, or two stars.
    private static final double LONGER = 2.5;
    // The fit must confirm most of what the filter detected.
    private static final double SEEN = 4;
    // Brighter stars are not affected by the local background, and have wings of their own there.
    private static final double FAINT = 30;
    private static final double SHARPER = 0.9;
    private static final double MOST_MISFIT = 3.5;
    private static final double BRIGHT_SIGNAL = 100;
    private static final double LONG = 2;
    private static final double TRAIL_REACH = 1.7;
    // The wings of a star that saturated its core predict a saturated one; those of a hot pixel do not.
    private static final double FILLED = 0.15;

    private final CutoutMaker cutouts;
    private final PsfEstimate usual;
    private final PsfEstimate sharper;
    private final NoiseModel law;
    private final ArtefactFilter artefacts;
    private final LinearArtefact ridge;

    StarMeasurer(CutoutMaker cutouts, PsfEstimate usual, NoiseModel law) {
        this.cutouts = cutouts;
        this.usual = usual;
        this.law = law;
        sharper = usual.sharper(SHARPER);
        artefacts = new ArtefactFilter(usual);
        ridge = new LinearArtefact(cutouts.frame(), cutouts.mesh(), usual);
    }

    /**
     * The star at a peak.
     *
     * @param beside stars whose light is not its own
     */
    Optional<MeasuredStar> measure(Peak peak, List<Fit> beside) {
        Optional<SaturatedCore> core = SaturatedCore.about(peak, cutouts.frame(), cutouts.full());
        if (core.isPresent()) {
            return core.get().disc() ? full(peak, core.get(), beside) : Optional.empty();
        }
        return fit(cutout(peak, beside), peak)
                // A star remeasured without its neighbours' light has passed this test already.
                .filter(f -> !beside.isEmpty() || !isOnLine(f))
                .map(f -> new MeasuredStar(peak, f, star(f, peak)));
    }

    /** The residuals of a bright star's fit. */
    Optional<FitResidual> leftover(Peak peak) {
        if (peak.height() < TELLING_SIGNAL
                || SaturatedCore.about(peak, cutouts.frame(), cutouts.full()).isPresent()) {
            return Optional.empty();
        }
        Cutout cutout = cutout(peak, List.of());
        return fit(cutout, peak)
                .filter(f -> !isOnLine(f))
                .flatMap(f -> f.image() instanceof StarImage.Trail
                        ? TrailFit.leftover(cutout, f, law)
                        : PointFit.leftover(cutout, f, law));
    }

    private Cutout cutout(Peak peak, List<Fit> beside) {
        StarShape shape = usual.shapeAt(peak.x(), peak.y());
        Cutout cutout = cutouts.about(
                        peak.x(),
                        peak.y(),
                        2 + (int) Math.ceil(REACH_SIGMAS * Math.sqrt(shape.xx())),
                        2 + (int) Math.ceil(REACH_SIGMAS * Math.sqrt(shape.yy())))
                .without(beside);
        return peak.height() < FAINT ? cutout.onLocalSky(peak.x(), peak.y(), shape) : cutout;
    }

    private Optional<Fit> fit(Cutout cutout, Peak peak) {
        boolean free = peak.height() > FREE_SHAPE_SIGNAL && isWithinFrame(usual.shapeAt(peak.x(), peak.y()), peak);
        return (free ? withFreeShape(cutout, peak) : withTypicalShape(cutout, peak))
                .filter(this::isInFrame)
                .filter(f -> f.signalToNoise() > SEEN)
                .filter(f -> !f.rivals().hotPixelsTellItBetter())
                .filter(StarMeasurer::isWellLocated)
                .filter(f -> usual.trail().isEmpty() || isGoodTrailFit(f));
    }

    private boolean isOnLine(Fit fit) {
        return ridge.passesThrough(fit.x(), fit.y(), fit.image().height());
    }

    private Optional<Fit> withFreeShape(Cutout cutout, Peak peak) {
        Optional<Fit> free = fit(cutout, peak.x(), peak.y(), usual, true);
        if (free.isEmpty() || artefacts.isTooSharp(free.get())) {
            // If a few pixels hold all the light, a star's shape is hard to determine; does the typical one fit?
            return withTypicalShape(cutout, peak).filter(f -> f.chiSquare() < MOST_MISFIT * f.freedom());
        }
        return free.filter(f -> !artefacts.isMisaligned(f));
    }

    private Optional<Fit> withTypicalShape(Cutout cutout, Peak peak) {
        Optional<Fit> fit = fit(cutout, peak.x(), peak.y(), usual, false);
        return fit.isPresent() && fit.get().rivals().hotPixelsTellItBetter()
                // Perhaps a star where the field is sharper.
                ? fit(cutout, peak.x(), peak.y(), sharper, false)
                : fit;
    }

    private Optional<Fit> fit(Cutout cutout, double x, double y, PsfEstimate like, boolean freeShape) {
        Optional<StarImage.Trail> trail = like.trailAt(x, y);
        return trail.isPresent()
                ? TrailFit.of(cutout, x, y, trail.get(), freeShape, law)
                : PointFit.of(cutout, x, y, like.shapeAt(x, y), freeShape, like.beta(), law);
    }

    /** Whether all of a trail lies in the frame; a truncated one can be located only if its length is known. */
    private boolean isWithinFrame(StarShape shape, Peak peak) {
        double reachX = shape.elongation() > LONG ? TRAIL_REACH * Math.sqrt(shape.xx()) : 0;
        double reachY = shape.elongation() > LONG ? TRAIL_REACH * Math.sqrt(shape.yy()) : 0;
        return peak.x() >= reachX
                && peak.y() >= reachY
                && peak.x() < cutouts.frame().width() - reachX
                && peak.y() < cutouts.frame().height() - reachY;
    }

    /** Whether a trail's residuals are only noise and, for a bright one, its imperfect shape. */
    private static boolean isGoodTrailFit(Fit fit) {
        double bright = fit.signalToNoise() / BRIGHT_SIGNAL;
        return fit.chiSquare() < (MOST_MISFIT + bright * bright) * fit.freedom();
    }

    /** Whether the centre's uncertainty is smaller than the star's width. */
    private static boolean isWellLocated(Fit fit) {
        return fit.varianceX() + fit.varianceY()
                < fit.shape().xx() + fit.shape().yy();
    }

    private boolean isInFrame(Fit fit) {
        return fit.x() > -0.5
                && fit.y() > -0.5
                && fit.x() < cutouts.frame().width() - 0.5
                && fit.y() < cutouts.frame().height() - 0.5;
    }

    private static FoundStar star(Fit fit, Peak peak) {
        return new FoundStar(
                fit.x(),
                fit.y(),
                Math.sqrt(fit.varianceX()),
                Math.sqrt(fit.varianceY()),
                fit.image().flux(),
                peak.height(),
                fit.image().fwhm(),
                fit.shape().elongation(),
                fit.shape().longAxisRad(),
                false);
    }

    private static FoundStar fullStar(Fit fit, Peak peak, SaturatedCore core, double leastFlux) {
        double doubt = CORE_OFFSET_SIGMA * core.radius();
        return new FoundStar(
                fit.x(),
                fit.y(),
                Math.hypot(Math.sqrt(fit.varianceX()), doubt),
                Math.hypot(Math.sqrt(fit.varianceY()), doubt),
                Math.max(leastFlux, fit.image().flux()),
                peak.height(),
                fit.image().fwhm(),
                fit.shape().elongation(),
                fit.shape().longAxisRad(),
                true);
    }

    /** A star with a saturated core, located by its wings. */
    private Optional<MeasuredStar> full(Peak peak, SaturatedCore core, List<Fit> beside) {
        StarShape shape = usual.shapeAt(core.x(), core.y());
        double wide = core.radius() * core.radius() / 2;
        StarShape start = new StarShape(shape.xx() + wide, shape.xy(), shape.yy() + wide);
        double ring = core.radius() + SURROUND * Math.sqrt(shape.minorVariance());
        StarShape mask = new StarShape(shape.xx() + ring * ring / 10, shape.xy(), shape.yy() + ring * ring / 10);
        int x = (int) Math.round(core.x());
        int y = (int) Math.round(core.y());
        Cutout cutout = cutouts.about(
                        x,
                        y,
                        1 + (int) Math.ceil(3.2 * Math.sqrt(mask.xx())),
                        1 + (int) Math.ceil(3.2 * Math.sqrt(mask.yy())))
                .without(beside);
        double above = cutouts.full() - cutouts.mesh().skyAt(x, y);
        return PointFit.masked(cutout, core.x(), core.y(), start, mask, usual.beta(), law)
                .filter(f -> Math.hypot(f.x() - core.x(), f.y() - core.y()) < core.radius() + 1)
                .filter(f -> f.image().height() > FILLED * above)
                .filter(f -> f.shape().elongation() < LONGER * Math.max(1, shape.elongation()))
                .map(f -> new MeasuredStar(
                        peak, f, fullStar(f, peak, core, Math.PI * core.radius() * core.radius() * above)));
    }
}
