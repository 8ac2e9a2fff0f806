package polewright.image.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/** The plate over a whole frame once it is nearly known: the distortion model that its stars support, and the odds. */
final class PlateChoice {
    private static final int JUDGED = 80;
    private static final int ROUNDS = 3;
    private static final double FIRST_LIMIT_PIXELS = 3;
    private static final double LEAST_LIMIT_PIXELS = 1;
    private static final double MOST_LIMIT_PIXELS = 4;
    private static final double FURTHEST_SIGMAS = 4;
    private static final double LEAST_SIGMA_PIXELS = 0.5;
    /** At least this many detections are judged. */
    static final int LEAST_TRUSTED = 12;
    // Half of a two-dimensional Gaussian's points lie within this many sigma.
    private static final double RAYLEIGH_MEDIAN = 1.1774;
    // A lens model of higher order must be better by "very strong" evidence (Kass & Raftery 1995, J. Am. Stat. Assoc.
    // 90, 773). With less, chance pairs and stars with unknown proper motion distort it, most of all in the corners.
    private static final double VERY_STRONG = 10;
    // Atlas positions: rounding, and the motion since J2000.0 of stars whose proper motion it does not list.
    private static final double ATLAS_SIGMA_RAD = Angle.ofArcseconds(0.5).radians();
    private static final double ATLAS_SIGMA_WITH_MOTION_RAD =
            Angle.ofArcseconds(0.15).radians();

    private final Detections detections;
    private final int sizeWithMotion;
    private final int leastTrusted;

    PlateChoice(Detections detections, StarAtlas atlas, int leastTrusted) {
        this.detections = detections;
        this.leastTrusted = leastTrusted;
        this.sizeWithMotion = atlas.sizeWithMotion();
    }

    /**
     * A plate that explains the frame.
     *
     * @param fit to all the stars that it explains
     * @param stars which they are
     * @param fitted the same as they were fitted
     * @param model the distortion model that was fitted
     * @param logOdds of being right, before correcting for the number of trials
     */
    record Chosen(PlateFit fit, PairedStars stars, PlateFit.Pairs fitted, PlateModel model, double logOdds) {}

    /**
     * Alternates pairing and fitting, dropping outliers, until nothing changes.
     *
     * @param below only stars of a smaller rank than this
     * @param tried number of detections
     */
    Optional<Chosen> over(Plate nearlyRight, MappedStars sky, int below, int tried) {
        Plate plate = nearlyRight;
        double limit = FIRST_LIMIT_PIXELS;
        int trusted = tried;
        Optional<Chosen> chosen = Optional.empty();
        for (int round = 0; round < ROUNDS; round++) {
            double tolerance = limit;
            PairedStars paired = PairedStars.of(plate, detections, sky, trusted, below, (x, y) -> tolerance);
            Optional<Fitted> best = bestModel(plate, paired);
            if (best.isEmpty()) {
                return Optional.empty();
            }
            Fitted fitted = best.get();
            plate = fitted.fit.plate();
            double sigma = fitted.sigmaPixels(paired);
            limit = Math.max(LEAST_LIMIT_PIXELS, Math.min(MOST_LIMIT_PIXELS, FURTHEST_SIGMAS * sigma));
            Gains gains = gains(fitted, paired, sky, below, sigma);
            trusted = Math.max(Math.min(tried, leastTrusted), gains.worthTrusting());
            chosen = Optional.of(new Chosen(
                    fitted.fit, paired, fitted.pairs, fitted.model, gains.logOdds(fitted.model.parameters() / 2)));
        }
        return chosen;
    }

    /** The paired stars with their uncertainties, ready for a fit. */
    PlateFit.Pairs forFit(PairedStars paired, Plate plate) {
        return paired.forFit(number -> number < sizeWithMotion
                ? ATLAS_SIGMA_WITH_MOTION_RAD * plate.pixelsPerRadian()
                : ATLAS_SIGMA_RAD * plate.pixelsPerRadian());
    }

    private record Fitted(PlateFit fit, PlateFit.Pairs pairs, PlateModel model) {
        /** Scatter of a coordinate from the median, which is robust against a few outliers. */
        double sigmaPixels(PairedStars paired) {
            double[] off = Arrays.stream(paired.paired())
                    .mapToDouble(detection -> Math.sqrt(paired.residualPixels2(fit.plate(), detection)))
                    .sorted()
                    .toArray();
            return off[off.length / 2] / RAYLEIGH_MEDIAN;
        }

        /** The Bayesian information criterion (Schwarz 1978, Ann. Statist. 6, 461), with the scatter unknown. */
        double criterion() {
            double figures = 2.0 * pairs.count();
            return figures * Math.log((fit.normalisedSquare() + 1) / figures) + model.parameters() * Math.log(figures);
        }
    }

    /** The simplest model that none of a higher order beats by very strong evidence. */
    private Optional<Fitted> bestModel(Plate plate, PairedStars paired) {
        PlateFit.Pairs pairs = forFit(paired, plate);
        Fitted best = null;
        for (PlateModel model : PlateModel.values()) {
            if (pairs.count() >= Math.max(Hypothesis.STARS, model.fewestStars())) {
                Optional<PlateFit> fit = PlateFit.of(plate, pairs, model);
                if (fit.isPresent()) {
                    Fitted fitted = new Fitted(fit.get(), pairs, model);
                    best = best == null || fitted.criterion() < best.criterion() - VERY_STRONG ? fitted : best;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** The evidence of each detection for a plate, brightest first: see {@link Odds#gain}. */
    private record Gains(List<Double> each) {
        /** The number of brightest detections that are mostly stars; the rest are ignored as noise and chance. */
        int worthTrusting() {
            double sum = 0;
            double best = 0;
            int trusted = 0;
            for (int i = 0; i < each.size(); i++) {
                sum += Math.log(Odds.EVEN + (1 - Odds.EVEN) * each.get(i));
                if (sum >= best) {
                    best = sum;
                    trusted = i + 1;
                }
            }
            return trusted;
        }

        /**
         * For the brightest, without as many of the best as determine the plate: those carry no information about it.
         */
        double logOdds(int determining) {
            List<Double> judged = each.stream()
                    .limit(JUDGED)
                    .sorted(Comparator.reverseOrder())
                    .toList();
            Odds odds = new Odds();
            judged.stream().skip(determining).forEach(odds::add);
            return odds.log();
        }
    }

    private Gains gains(Fitted fitted, PairedStars paired, MappedStars sky, int below, double sigmaPixels) {
        double area = (double) detections.width() * detections.height();
        double stars = starsOnFrame(fitted.fit.plate(), sky, below);
        double sigma = Math.max(LEAST_SIGMA_PIXELS, sigmaPixels);
        List<Double> gains = new ArrayList<>();
        for (int i = 0; i < paired.tried(); i++) {
            gains.add(
                    paired.rankOf(i) < 0
                            ? 0
                            : Odds.gain(
                                    area,
                                    stars,
                                    paired.residualPixels2(fitted.fit.plate(), i),
                                    Math.hypot(sigma, detections.sigma(i))));
        }
        return new Gains(gains);
    }

    private double starsOnFrame(Plate plate, MappedStars sky, int below) {
        int[] count = new int[1];
        Vector3D c = plate.centre();
        sky.grid().near(c.getX(), c.getY(), c.getZ(), plate.radius().radians(), below, (rank, apart2) -> count[0]++);
        // The frame's fraction of its circumscribed circle.
        double circle = Math.PI * detections.halfDiagonal() * detections.halfDiagonal();
        return count[0] * (double) detections.width() * detections.height() / circle;
    }
}
