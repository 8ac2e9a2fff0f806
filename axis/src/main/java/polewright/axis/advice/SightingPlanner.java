package polewright.axis.advice;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;
import polewright.axis.rig.Optic;
import polewright.axis.sighting.CompassBearing;
import polewright.axis.sighting.LevelledScale;
import polewright.axis.sighting.StarDrift;
import polewright.axis.sighting.StillPoint;
import polewright.sky.angle.Angle;

/** Which sighting to take: the one that narrows the fix most per minute, at usual accuracies. */
final class SightingPlanner {
    /** How long a drift is watched, unless said otherwise. */
    static final double DRIFT_MINUTES = 6;

    // 1' of offset drifts 0.2625" a minute at most (2π/86164.0905 s per radian).
    private static final double DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN = 0.26252;
    private static final double SETTING_A_STAR_MINUTES = 2;
    private static final double COMPASS_MINUTES = 2;
    private static final double STILL_POINT_MINUTES = 4;
    // A pole star is at most this far from the pole (Sigma Octantis 1.2°).
    private static final double POLE_STAR_ARCMIN = 75;
    // Refraction is uncertain by about this much in a drift low in the east or west.
    private static final double REFRACTION_ARCMIN = 0.5;

    private SightingPlanner() {}

    /** A kind of sighting, what it would tell of (east, up), and what it costs. */
    private record Candidate(SightingKind kind, double sigmaEastArcmin, double sigmaUpArcmin, double minutes) {
        OffsetCovariance after(OffsetCovariance before) {
            // Sum of information matrices, inverted.
            double determinant =
                    before.eastEastArcmin2() * before.upUpArcmin2() - before.eastUpArcmin2() * before.eastUpArcmin2();
            double ee = before.upUpArcmin2() / determinant + 1 / (sigmaEastArcmin * sigmaEastArcmin);
            double uu = before.eastEastArcmin2() / determinant + 1 / (sigmaUpArcmin * sigmaUpArcmin);
            double eu = -before.eastUpArcmin2() / determinant;
            double d = ee * uu - eu * eu;
            return new OffsetCovariance(uu / d, -eu / d, ee / d);
        }

        double worth(OffsetCovariance before) {
            OffsetCovariance after = after(before);
            double gain = Math.log((before.eastEastArcmin2() + before.upUpArcmin2())
                    / (after.eastEastArcmin2() + after.upUpArcmin2()));
            return gain / minutes;
        }
    }

    static SightingKind best(Situation situation) {
        OffsetCovariance now = situation.fix().state().offsetCovariance();
        return candidates(situation)
                .max(Comparator.comparingDouble(c -> c.worth(now)))
                .map(Candidate::kind)
                .orElse(SightingKind.DRIFT_ON_MERIDIAN);
    }

    private static Stream<Candidate> candidates(Situation situation) {
        double cosLat = situation.fix().state().site().latitude().cos();
        Stream.Builder<Candidate> candidates = Stream.builder();
        if (!situation.groundRead()) {
            candidates.add(new Candidate(
                    SightingKind.COMPASS_AND_LEVEL,
                    CompassBearing.USUAL_SIGMA.arcminutes() * Math.max(0.02, cosLat),
                    LevelledScale.USUAL_SIGMA.arcminutes(),
                    COMPASS_MINUTES));
        }
        widestField(situation)
                .filter(field -> poleStarIsInReach(situation, field))
                .ifPresent(field -> {
                    double sigma = StillPoint.USUAL_SIGMA_OF_FIELD * field.arcminutes();
                    candidates.add(new Candidate(SightingKind.STILL_POINT, sigma, sigma, STILL_POINT_MINUTES));
                });
        double drift = driftSigmaArcsec(situation) / (DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN * DRIFT_MINUTES);
        double minutes = SETTING_A_STAR_MINUTES + DRIFT_MINUTES;
        double nothing = 1e6;
        candidates.add(new Candidate(SightingKind.DRIFT_ON_MERIDIAN, drift, nothing, minutes));
        candidates.add(
                new Candidate(SightingKind.DRIFT_EAST_OR_WEST, nothing, Math.hypot(drift, REFRACTION_ARCMIN), minutes));
        return candidates.build();
    }

    private static boolean poleStarIsInReach(Situation situation, Angle field) {
        AxisOffset offset = situation.fix().state().offset();
        double sigma = situation.fix().state().offsetCovariance().largestSigma().arcminutes();
        return offset.distance().arcminutes() + sigma + POLE_STAR_ARCMIN / 2 < field.arcminutes() / 2;
    }

    private static Optional<Angle> widestField(Situation situation) {
        return situation.rig().optics().stream().map(Optic::field).max(Comparator.naturalOrder());
    }

    private static double driftSigmaArcsec(Situation situation) {
        return situation.rig().optics().stream()
                .mapToDouble(optic -> optic.division().isPresent()
                        ? StarDrift.USUAL_SIGMA_DIVISIONS
                                * optic.division().get().arcseconds()
                        : StarDrift.USUAL_SIGMA_OF_FIELD * optic.field().arcseconds())
                .min()
                .orElse(StarDrift.USUAL_SIGMA_ARCSECONDS);
    }
}
