package polewright.axis.advice;

import java.time.Duration;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;
import polewright.axis.advice.Advice.TakeSighting;
import polewright.axis.fix.Agreement;
import polewright.axis.fix.AxisState;
import polewright.axis.fix.Fix;
import polewright.axis.rig.Camera;
import polewright.axis.rig.Optic;
import polewright.axis.sighting.BodyBearing;
import polewright.axis.sighting.CompassBearing;
import polewright.axis.sighting.LevelledScale;
import polewright.axis.sighting.StarDrift;
import polewright.axis.sighting.StillPoint;
import polewright.axis.sighting.TurnedFrames;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.RotationCovariance;

/** Which sighting to take: the one that narrows the fix most per minute, at usual accuracies. */
final class SightingPlanner {
    private static final int[] DRIFT_MINUTES = {5, 10, 15};

    // 1' of offset drifts 0.2625" a minute at most (2π/86164.0905 s per radian).
    private static final double DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN = 0.26252;
    private static final double SETTING_A_STAR_MINUTES = 2;
    private static final double READING_MINUTES = 2;
    // The uncertainty of what a sighting does not tell.
    private static final double NOTHING = 1e6;
    private static final double STILL_POINT_MINUTES = 4;
    private static final double FRAMES_MINUTES = 4;
    // Distance of Polaris and of Sigma Octantis from the pole in these years, in round figures.
    private static final double NORTHERN_POLE_STAR_ARCMIN = 38;
    private static final double SOUTHERN_POLE_STAR_ARCMIN = 70;
    private static final double MOSTLY = 0.7;
    // Refraction is uncertain by about this much in a drift low in the east or west.
    private static final double REFRACTION_ARCMIN = 0.5;

    private SightingPlanner() {}

    /**
     * A kind of sighting and what it would tell.
     *
     * @param minutes what it costs, all told
     * @param watched how long a star is watched, minutes; 0 for a reading
     */
    private record Candidate(
            SightingKind kind, double sigmaEastArcmin, double sigmaUpArcmin, double minutes, int watched) {
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

    /** The best sighting that can be taken now; by day, when the ground has been read, to wait for dark. */
    static Advice best(Situation situation, double probabilityNow, String reason) {
        OffsetCovariance now = situation.fix().state().offsetCovariance();
        return candidates(situation)
                .filter(c -> settlesTheDispute(c, situation.fix()))
                .max(Comparator.comparingDouble(c -> c.worth(now)))
                .<Advice>map(c -> new TakeSighting(
                        probabilityNow, c.kind(), Optional.empty(), Duration.ofMinutes(c.watched()), reason))
                .orElseGet(() -> new Advice.WaitForDark(probabilityNow));
    }

    /** Of sightings in conflict over east and west, another that tells only of height would settle nothing. */
    private static boolean settlesTheDispute(Candidate candidate, Fix fix) {
        if (!(fix instanceof Fix.Dubious)) {
            return true;
        }
        DoubleSummaryStatistics eastShares = fix.agreements().stream()
                .filter(Agreement::contradictory)
                .mapToDouble(Agreement::eastShare)
                .summaryStatistics();
        boolean overEast = eastShares.getCount() > 0 && eastShares.getMin() > MOSTLY;
        boolean overHeight = eastShares.getCount() > 0 && eastShares.getMax() < 1 - MOSTLY;
        return !(overEast && candidate.sigmaEastArcmin() >= NOTHING)
                && !(overHeight && candidate.sigmaUpArcmin() >= NOTHING);
    }

    /**
     * Whether the pole star is out of the widest field now, but turning to the aim would bring it in. A camera does not
     * need it: its frames tell the axis from anywhere, and better turns can be made by them.
     */
    static boolean turningBringsPoleStarIntoReach(Situation situation, AxisState afterTurns) {
        if (situation.rig().bestCamera().isPresent() && situation.daylight() == Daylight.NONE) {
            return false;
        }
        return situation
                .rig()
                .widestOptic()
                .map(Optic::field)
                .filter(field ->
                        !poleStarIsInReach(situation.fix().state(), field) && poleStarIsInReach(afterTurns, field))
                .isPresent();
    }

    private static Stream<Candidate> candidates(Situation situation) {
        double cosLat = situation.fix().state().site().latitude().cos();
        Stream.Builder<Candidate> candidates = Stream.builder();
        if (!situation.alreadyRead().contains(SightingKind.COMPASS)) {
            double sigma = CompassBearing.USUAL_SIGMA.arcminutes() * cosLat;
            candidates.add(new Candidate(SightingKind.COMPASS, sigma, NOTHING, READING_MINUTES, 0));
        }
        if (!situation.alreadyRead().contains(SightingKind.LEVEL_AND_SCALE)) {
            candidates.add(new Candidate(
                    SightingKind.LEVEL_AND_SCALE, NOTHING, LevelledScale.USUAL_SIGMA.arcminutes(), READING_MINUTES, 0));
        }
        if (situation.daylight() != Daylight.NONE) {
            if (situation.daylight() == Daylight.SHADOW
                    && !situation.alreadyRead().contains(SightingKind.SHADOW)) {
                double sigma = BodyBearing.USUAL_SIGMA.arcminutes() * cosLat;
                candidates.add(new Candidate(SightingKind.SHADOW, sigma, NOTHING, READING_MINUTES, 0));
            }
            return candidates.build();
        }
        situation
                .rig()
                .widestOptic()
                .map(Optic::field)
                .filter(field -> poleStarIsInReach(situation.fix().state(), field))
                .ifPresent(field -> {
                    double sigma = StillPoint.USUAL_SIGMA_OF_FIELD * field.arcminutes();
                    candidates.add(new Candidate(SightingKind.STILL_POINT, sigma, sigma, STILL_POINT_MINUTES, 0));
                });
        situation
                .rig()
                .bestCamera()
                .map(SightingPlanner::framesSigmaArcmin)
                .ifPresent(
                        sigma -> candidates.add(new Candidate(SightingKind.FRAMES, sigma, sigma, FRAMES_MINUTES, 0)));
        double driftSigmaArcsec = StarDrift.usualSigma(situation.rig()).arcseconds();
        for (int watched : DRIFT_MINUTES) {
            double sigma = driftSigmaArcsec / (DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN * watched);
            double minutes = SETTING_A_STAR_MINUTES + watched;
            candidates.add(new Candidate(SightingKind.DRIFT_ON_MERIDIAN, sigma, NOTHING, minutes, watched));
            candidates.add(new Candidate(
                    SightingKind.DRIFT_EAST_OR_WEST, NOTHING, Math.hypot(sigma, REFRACTION_ARCMIN), minutes, watched));
        }
        return candidates.build();
    }

    /**
     * What two frames tell in the worse direction: √(σ_c² cos²p + σ_r² sin²p) / (√2 sin ½θ), with a turn θ of 60° and the
     * field half-way between pole and equator.
     */
    private static double framesSigmaArcmin(Camera camera) {
        RotationCovariance covariance = camera.usualCovariance();
        double oneFrame = Math.hypot(
                        covariance.centreSigma().arcminutes(),
                        covariance.rollSigma().arcminutes())
                / Math.sqrt(2);
        double twoFrames = oneFrame / (Math.sqrt(2) * Math.sin(Math.toRadians(30)));
        return Math.hypot(twoFrames, TurnedFrames.MOUNTS_OWN_GIVE.arcminutes());
    }

    private static boolean poleStarIsInReach(AxisState state, Angle field) {
        AxisOffset offset = state.offset();
        double sigma = state.offsetCovariance().largestSigma().arcminutes();
        double poleStar = state.site().isNorthern() ? NORTHERN_POLE_STAR_ARCMIN : SOUTHERN_POLE_STAR_ARCMIN;
        return offset.distance().arcminutes() + sigma + poleStar < field.arcminutes() / 2;
    }
}
