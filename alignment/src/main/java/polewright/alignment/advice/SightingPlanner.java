package polewright.alignment.advice;

import java.time.Duration;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import polewright.alignment.advice.Advice.TakeSighting;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Fix;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Optic;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.RotationCovariance;

/**
 * Chooses the next sighting, at usual accuracies: the one with the highest expected value per minute.
 *
 * <p>The value is the expected probability of ending within the allowance, over the possible results of the sighting
 * and the turns that would follow. Far from the zone no single sighting achieves that, and the reduction of the fix's
 * variance decides.
 */
final class SightingPlanner {
    private static final Set<SightingKind> READINGS =
            EnumSet.of(SightingKind.COMPASS, SightingKind.LEVEL_AND_SCALE, SightingKind.SHADOW);
    private static final double READING_MINUTES = 2;
    private static final double STILL_POINT_MINUTES = 4;
    private static final double FRAMES_MINUTES = 4;
    // Present distance of Polaris and of Sigma Octantis from the pole, in round figures.
    private static final double NORTHERN_POLE_STAR_ARCMIN = 38;
    private static final double SOUTHERN_POLE_STAR_ARCMIN = 70;
    // The value of a better fix while the probability is small: dividing the variance by e counts as 5 %.
    private static final double WORTH_OF_NARROWING = 0.05;
    // The turn or sighting that follows takes about this long whatever the sighting was.
    static final double MINUTES_TO_FOLLOW = 5;

    private SightingPlanner() {}

    /** The best sighting that can be taken now, or the advice to wait for dark if there is none. */
    static Advice best(Situation situation, double probabilityNow, String reason) {
        return best(ranking(situation), probabilityNow, reason);
    }

    static Advice best(List<RankedSighting> ranking, double probabilityNow, String reason) {
        return ranking.stream()
                .findFirst()
                .<Advice>map(r -> new TakeSighting(probabilityNow, r.kind(), r.star(), r.watch(), reason))
                .orElseGet(() -> new Advice.WaitForDark(probabilityNow));
    }

    /**
     * The sighting that would show soonest whether tightening the clamps has moved the axis by half the depth of the
     * zone. Compass, scale and shadow readings are too coarse for that.
     */
    static Advice confirming(Situation situation, double probabilityNow, String reason) {
        double matters = Math.pow(situation.allowance().depth().arcminutes() / 2, 2);
        OffsetCovariance now = situation.fix().state().offsetCovariance();
        OffsetCovariance moved =
                new OffsetCovariance(now.eastEastArcmin2() + matters, now.eastUpArcmin2(), now.upUpArcmin2() + matters);
        return candidates(situation, moved)
                .filter(c -> !READINGS.contains(c.kind()))
                .max(Comparator.comparingDouble(c -> c.information().narrowing(moved) / c.minutes()))
                .map(candidate -> candidate.advised(probabilityNow, reason))
                .orElseGet(() -> best(situation, probabilityNow, reason));
    }

    /** The sightings that can be taken, the most valuable first. */
    static List<RankedSighting> ranking(Situation situation) {
        AxisState state = situation.fix().state();
        AxisOffset mean = state.offset();
        OffsetCovariance now = state.offsetCovariance();
        Outlook outlook = new Outlook(situation);
        double without = outlook.better(mean, now);
        // A sighting for which all explanations predict the same result settles nothing.
        return DiscriminatingSighting.settling(candidates(situation, now).toList(), situation.fix()).stream()
                .map(c -> {
                    Outlook.Expectation after =
                            outlook.expected(mean, now, c.information().after(now));
                    double narrowing = WORTH_OF_NARROWING
                            * (1 - after.assurance())
                            * c.information().narrowing(now);
                    double gain = after.assurance() - Outlook.assurance(without) + narrowing;
                    return new RankedSighting(
                            c.kind(),
                            c.star(),
                            Duration.ofMinutes(c.watched()),
                            c.minutes(),
                            Math.max(without, after.probability()),
                            gain / (c.minutes() + MINUTES_TO_FOLLOW));
                })
                .sorted(Comparator.<RankedSighting>comparingInt(r -> partiality(r.kind(), situation.fix()))
                        .thenComparingDouble(r -> -r.gainPerMinute()))
                .toList();
    }

    /**
     * How unsuitable this kind of sighting is for deciding a dispute between sightings of different kinds: 0 for a
     * third kind; 1 for a kind in the dispute; 2 if a usual mistake would explain that one, because it is likely to be
     * repeated and would then outvote the other sighting without deciding anything.
     */
    private static int partiality(SightingKind kind, Fix fix) {
        List<Agreement> accused = fix instanceof Fix.Dubious dubious && dubious.dispute() == Fix.Dispute.THE_AXIS
                ? dubious.agreements().stream().filter(Agreement::contradictory).toList()
                : List.of();
        if (accused.stream().map(Agreement::type).distinct().count() < 2) {
            return 0;
        }
        return accused.stream()
                .filter(sighting -> sighting.type().equals(kind.type()))
                .mapToInt(sighting -> sighting.likelyCause().isPresent() ? 2 : 1)
                .max()
                .orElse(0);
    }

    /** Whether explanations put the axis in different places that no sighting possible now can discriminate. */
    static boolean isBeyondSightings(Situation situation) {
        return DiscriminatingSighting.areBeyond(
                candidates(situation, situation.fix().state().offsetCovariance())
                        .toList(),
                situation.fix());
    }

    /**
     * Whether the pole star is outside the widest field now, but turning to the aim would bring it in. A camera does
     * not need it: frames measure the axis from anywhere, and turns based on them are better.
     */
    static boolean turningBringsPoleStarIntoReach(Situation situation, AxisState afterTurns) {
        if (situation.rig().bestCamera().isPresent() && situation.daylight() == Daylight.NONE) {
            return false;
        }
        return situation
                .rig()
                .widestOptic()
                .map(Optic::field)
                .filter(field -> !poleStarIsInReach(situation, situation.fix().state(), field)
                        && poleStarIsInReach(situation, afterTurns, field))
                .isPresent();
    }

    /** The sightings that can be taken now, without those that the observer has ruled out. */
    static Stream<Candidate> candidates(Situation situation, OffsetCovariance now) {
        return ofEveryKind(situation, now)
                .filter(candidate -> !situation.ruledOut().contains(candidate.kind()));
    }

    private static Stream<Candidate> ofEveryKind(Situation situation, OffsetCovariance now) {
        double cosLat = situation.fix().state().site().latitude().cos();
        Stream.Builder<Candidate> candidates = Stream.builder();
        if (!situation.alreadyRead().contains(SightingKind.COMPASS)) {
            double sigma = CompassBearing.USUAL_SIGMA.arcminutes() * cosLat;
            candidates.add(reading(SightingKind.COMPASS, READING_MINUTES, InformationMatrix.ofRow(1, 0, sigma)));
        }
        if (!situation.alreadyRead().contains(SightingKind.LEVEL_AND_SCALE)) {
            double sigma = LevelledScale.USUAL_SIGMA.arcminutes();
            candidates.add(
                    reading(SightingKind.LEVEL_AND_SCALE, READING_MINUTES, InformationMatrix.ofRow(0, 1, sigma)));
        }
        if (situation.daylight() != Daylight.NONE) {
            if (situation.daylight() == Daylight.SHADOW
                    && !situation.alreadyRead().contains(SightingKind.SHADOW)) {
                double sigma = BodyBearing.USUAL_SIGMA.arcminutes() * cosLat;
                candidates.add(reading(SightingKind.SHADOW, READING_MINUTES, InformationMatrix.ofRow(1, 0, sigma)));
            }
            return candidates.build();
        }
        situation
                .rig()
                .widestOptic()
                .map(Optic::field)
                .filter(field -> poleStarIsInReach(situation, situation.fix().state(), field))
                .ifPresent(field -> candidates.add(new Candidate(
                        SightingKind.STILL_POINT,
                        poleStar(situation),
                        0,
                        STILL_POINT_MINUTES,
                        InformationMatrix.ofBoth(StillPoint.USUAL_SIGMA_OF_FIELD * field.arcminutes()))));
        situation
                .rig()
                .bestCamera()
                .map(SightingPlanner::framesSigmaArcmin)
                .ifPresent(sigma ->
                        candidates.add(reading(SightingKind.FRAMES, FRAMES_MINUTES, InformationMatrix.ofBoth(sigma))));
        return Stream.concat(candidates.build(), new DriftCandidates(situation).of(now));
    }

    private static Candidate reading(SightingKind kind, double minutes, InformationMatrix information) {
        return new Candidate(kind, Optional.empty(), 0, minutes, information);
    }

    /**
     * Sigma of the axis from two frames in the worse direction: √(σ_c² cos²p + σ_r² sin²p) / (√2 sin ½θ), for a
     * rotation θ of 60° and a field half-way between pole and equator.
     */
    private static double framesSigmaArcmin(Camera camera) {
        RotationCovariance covariance = camera.usualCovariance();
        double oneFrame = Math.hypot(
                        covariance.centreSigma().arcminutes(),
                        covariance.rollSigma().arcminutes())
                / Math.sqrt(2);
        double twoFrames = oneFrame / (Math.sqrt(2) * Math.sin(Math.toRadians(30)));
        return Math.hypot(twoFrames, TurnedFrames.MOUNT_FLEXURE.arcminutes());
    }

    static Optional<AdvisedStar> poleStar(Situation situation) {
        return situation.stars().stream()
                .filter(star ->
                        DriftCandidates.isPoleStar(star, situation.fix().state().site()))
                .findFirst();
    }

    /** Whether the pole star is in a field of this width about where the axis points. */
    static boolean poleStarIsInReach(Situation situation, AxisState state, Angle field) {
        return poleStarIsInReach(situation, state.offset(), state.offsetCovariance(), field);
    }

    /** The same for an axis with this offset and covariance. */
    static boolean poleStarIsInReach(Situation situation, AxisOffset offset, OffsetCovariance covariance, Angle field) {
        if (!situation.stars().isEmpty() && poleStar(situation).isEmpty()) {
            return false;
        }
        double sigma = covariance.largestSigma().arcminutes();
        double usual =
                situation.fix().state().site().isNorthern() ? NORTHERN_POLE_STAR_ARCMIN : SOUTHERN_POLE_STAR_ARCMIN;
        double poleStar = poleStar(situation)
                .map(star -> 90 * 60 - star.place().declination().abs().arcminutes())
                .orElse(usual);
        return offset.distance().arcminutes() + sigma + poleStar < field.arcminutes() / 2;
    }
}
