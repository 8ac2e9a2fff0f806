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
 * Which sighting to take, at usual accuracies: the one of which one may expect the most per minute.
 *
 * <p>What counts is the probability of being good enough in the end, on what the sighting may tell and what will then be
 * done about it. Far from the zone no single sighting brings that about; there, how much each narrows the fix decides.
 */
final class SightingPlanner {
    private static final Set<SightingKind> READINGS =
            EnumSet.of(SightingKind.COMPASS, SightingKind.LEVEL_AND_SCALE, SightingKind.SHADOW);
    private static final double READING_MINUTES = 2;
    private static final double STILL_POINT_MINUTES = 4;
    private static final double FRAMES_MINUTES = 4;
    // Distance of Polaris and of Sigma Octantis from the pole in these years, in round figures.
    private static final double NORTHERN_POLE_STAR_ARCMIN = 38;
    private static final double SOUTHERN_POLE_STAR_ARCMIN = 70;
    // What narrowing the fix is worth while probability is small: dividing the variance by e, as much as 5 %.
    private static final double WORTH_OF_NARROWING = 0.05;
    // What follows a sighting, some turn or another sighting, takes about so long whatever the sighting was.
    static final double MINUTES_TO_FOLLOW = 5;

    private SightingPlanner() {}

    /** The best sighting that can be taken now; by day, when the ground has been read, to wait for dark. */
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
     * The sighting that would soonest show that tightening the clamps has moved the axis by as much as matters, half the
     * depth of the zone: readings are too rough to.
     */
    static Advice confirming(Situation situation, double probabilityNow, String reason) {
        double matters = Math.pow(situation.allowance().depth().arcminutes() / 2, 2);
        OffsetCovariance now = situation.fix().state().offsetCovariance();
        OffsetCovariance moved =
                new OffsetCovariance(now.eastEastArcmin2() + matters, now.eastUpArcmin2(), now.upUpArcmin2() + matters);
        return candidates(situation, moved)
                .filter(c -> !READINGS.contains(c.kind()))
                .max(Comparator.comparingDouble(c -> c.tells().narrowing(moved) / c.minutes()))
                .map(candidate -> candidate.advised(probabilityNow, reason))
                .orElseGet(() -> best(situation, probabilityNow, reason));
    }

    /** All that can be taken, the most worth while first. */
    static List<RankedSighting> ranking(Situation situation) {
        AxisState state = situation.fix().state();
        AxisOffset mean = state.offset();
        OffsetCovariance now = state.offsetCovariance();
        Outlook outlook = new Outlook(situation);
        double without = outlook.better(mean, now);
        // A sighting about which the explanations agree settles nothing.
        return DiscriminatingSighting.settling(candidates(situation, now).toList(), situation.fix()).stream()
                .map(c -> {
                    Outlook.Expectation after =
                            outlook.expected(mean, now, c.tells().after(now));
                    double narrowing = WORTH_OF_NARROWING
                            * (1 - after.assurance())
                            * c.tells().narrowing(now);
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
     * How little a sighting of this kind would decide a dispute between sightings of different kinds: 0 for a third kind; 1
     * for a kind in the dispute; 2 where a usual mistake would explain that one, for taken again in the same way it is
     * mistaken in the same way, and would outvote the other without having decided anything.
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

    /** Whether explanations put the axis in different places, and nothing that can be sighted now tells one from the other. */
    static boolean isBeyondSightings(Situation situation) {
        return DiscriminatingSighting.areBeyond(
                candidates(situation, situation.fix().state().offsetCovariance())
                        .toList(),
                situation.fix());
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
                .filter(field -> !poleStarIsInReach(situation, situation.fix().state(), field)
                        && poleStarIsInReach(situation, afterTurns, field))
                .isPresent();
    }

    /** What can be taken now, but for what the observer has ruled out. */
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

    private static Candidate reading(SightingKind kind, double minutes, InformationMatrix tells) {
        return new Candidate(kind, Optional.empty(), 0, minutes, tells);
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

    static Optional<AdvisedStar> poleStar(Situation situation) {
        return situation.stars().stream()
                .filter(star ->
                        DriftCandidates.isPoleStar(star, situation.fix().state().site()))
                .findFirst();
    }

    /** Whether the pole star stands in a field of this width about where the axis points. */
    static boolean poleStarIsInReach(Situation situation, AxisState state, Angle field) {
        return poleStarIsInReach(situation, state.offset(), state.offsetCovariance(), field);
    }

    /** The same of an axis that may be {@code offset} off, with this covariance. */
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
