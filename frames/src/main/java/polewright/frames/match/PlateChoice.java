package polewright.frames.match;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/** The plate over a whole frame once it is nearly known: how much of the lens its stars support, and at what odds. */
final class PlateChoice {
    private static final int JUDGED = 80;
    private static final int ROUNDS = 3;
    private static final double FIRST_LIMIT_PIXELS = 3;
    private static final double LEAST_LIMIT_PIXELS = 1;
    private static final double MOST_LIMIT_PIXELS = 4;
    private static final double FURTHEST_SIGMAS = 4;
    private static final double LEAST_SIGMA_PIXELS = 0.5;
    // Places of the atlas: steps of rounding, and the motion since J2000.0 of the stars whose motion it does not know.
    private static final double ATLAS_SIGMA_RAD = Angle.ofArcseconds(0.5).radians();
    private static final double ATLAS_SIGMA_WITH_MOTION_RAD =
            Angle.ofArcseconds(0.15).radians();

    private final Detections detections;
    private final int sizeWithMotion;

    PlateChoice(Detections detections, StarAtlas atlas) {
        this.detections = detections;
        this.sizeWithMotion = atlas.sizeWithMotion();
    }

    /**
     * A plate that explains the frame.
     *
     * @param fit over all the stars that it explains
     * @param stars which they are
     * @param fitted the same as they were fitted
     * @param model how much of the lens was fitted
     * @param logOdds of being right, before the search is paid for
     */
    record Chosen(PlateFit fit, PairedStars stars, PlateFit.Pairs fitted, PlateModel model, double logOdds) {}

    /**
     * Pairs again and fits again, with strays left behind, until it stays.
     *
     * @param below only stars of a smaller rank than this
     * @param tried how many detections
     */
    Optional<Chosen> over(Plate nearlyRight, MappedStars sky, int below, int tried) {
        Plate plate = nearlyRight;
        double limit = FIRST_LIMIT_PIXELS;
        Optional<Chosen> chosen = Optional.empty();
        for (int round = 0; round < ROUNDS; round++) {
            double tolerance = limit;
            PairedStars paired = PairedStars.of(plate, detections, sky, tried, below, (x, y) -> tolerance);
            Optional<Fitted> best = bestModel(plate, paired);
            if (best.isEmpty()) {
                return Optional.empty();
            }
            Fitted fitted = best.get();
            plate = fitted.fit.plate();
            double rms = fitted.rmsPixels(paired);
            limit = Math.max(LEAST_LIMIT_PIXELS, Math.min(MOST_LIMIT_PIXELS, FURTHEST_SIGMAS * rms));
            chosen = Optional.of(new Chosen(
                    fitted.fit, paired, fitted.pairs, fitted.model, logOdds(fitted, paired, sky, below, rms)));
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
        double rmsPixels(PairedStars paired) {
            double square = 0;
            for (int detection : paired.paired()) {
                square += paired.offPixels2(fit.plate(), detection);
            }
            return Math.sqrt(square / pairs.count() / 2);
        }

        /** The Bayesian information criterion (Schwarz 1978, Ann. Statist. 6, 461), with the scatter unknown. */
        double criterion() {
            double figures = 2.0 * pairs.count();
            return figures * Math.log((fit.normalisedSquare() + 1) / figures) + model.parameters() * Math.log(figures);
        }
    }

    private Optional<Fitted> bestModel(Plate plate, PairedStars paired) {
        PlateFit.Pairs pairs = forFit(paired, plate);
        return Arrays.stream(PlateModel.values())
                .filter(model -> pairs.count() >= Math.max(Hypothesis.STARS, model.fewestStars()))
                .flatMap(model -> PlateFit.of(plate, pairs, model).map(fit -> new Fitted(fit, pairs, model)).stream())
                .min(java.util.Comparator.comparingDouble(Fitted::criterion));
    }

    private double logOdds(Fitted fitted, PairedStars paired, MappedStars sky, int below, double rmsPixels) {
        double area = (double) detections.width() * detections.height();
        double stars = starsOnFrame(fitted.fit.plate(), sky, below);
        int judged = Math.min(JUDGED, paired.tried());
        double sigma = Math.max(LEAST_SIGMA_PIXELS, rmsPixels);
        double[] gains = new double[judged];
        for (int i = 0; i < judged; i++) {
            if (paired.rankOf(i) >= 0) {
                double off2 = paired.offPixels2(fitted.fit.plate(), i);
                gains[i] = Odds.gain(area, stars, off2, Math.hypot(sigma, detections.sigma(i)));
            }
        }
        // As many stars as determine the plate say nothing of it: the best are left out.
        Arrays.sort(gains);
        Odds odds = new Odds();
        for (int i = 0; i < judged - fitted.model.parameters() / 2; i++) {
            odds.add(gains[i]);
        }
        return odds.log();
    }

    private double starsOnFrame(Plate plate, MappedStars sky, int below) {
        int[] count = new int[1];
        Vector3D c = plate.centre();
        sky.grid()
                .near(
                        plate.rightAscension().radians(),
                        plate.declination().radians(),
                        c.getX(),
                        c.getY(),
                        c.getZ(),
                        plate.radius().radians(),
                        below,
                        rank -> count[0]++);
        // The frame's share of the circle around it.
        double circle = Math.PI * detections.halfDiagonal() * detections.halfDiagonal();
        return count[0] * (double) detections.width() * detections.height() / circle;
    }
}
