package polewright.planning.tonight;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.reach.PointingLimits;
import polewright.sky.almanac.LunarPhase;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.body.SunGuard;
import polewright.sky.daylight.FaintestStar;
import polewright.sky.daylight.Instrument;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ObservingMoment;

/**
 * The stars suitable for alignment at one moment, with their penalties.
 *
 * @param usable most suitable first
 * @param exclusions number of stars above the horizon excluded for each reason
 */
record StarCandidates(List<StarCandidate> usable, Map<ExclusionReason, Integer> exclusions) {
    private static final double LOWEST_DEG = 15;
    private static final double HIGHEST_DEG = 82;
    private static final double PREFERRED_LOWEST_DEG = 25;
    private static final double PREFERRED_HIGHEST_DEG = 70;
    // Closer to the pole than this, hour angle is poorly determined.
    private static final double FARTHEST_FROM_EQUATOR_DEG = 80;
    private static final double SLOW_FROM_EQUATOR_DEG = 65;
    // Beyond this hour angle, a fork overhangs and slews are long.
    private static final double FAR_ROUND_DEG = 90;
    private static final Angle REGION = Angle.ofDegrees(20);
    private static final Angle MISTAKEN_WITHIN = Angle.ofDegrees(10);
    private static final double MISTAKEN_MAGNITUDES = 0.8;
    // A thin Moon 5°, a full one 20° (common practice).
    private static final double MOON_LEAST_DEG = 5;
    private static final double MOON_MORE_WHEN_FULL_DEG = 15;

    StarCandidates {
        usable = List.copyOf(usable);
        exclusions = Map.copyOf(exclusions);
    }

    /** The circumstances of one moment, common to all stars. */
    private record Circumstances(
            PointingLimits reach, SunGuard sun, AirlessDirection moon, Angle moonKeepAway, Instrument tube) {
        static Circumstances of(PointingLimits reach, ObservingMoment moment, Instrument tube) {
            return new Circumstances(
                    reach,
                    SunGuard.at(moment),
                    moment.airless(SolarSystem.apparent(SolarSystemBody.MOON, moment)),
                    Angle.ofDegrees(MOON_LEAST_DEG
                            + MOON_MORE_WHEN_FULL_DEG * LunarPhase.at(moment).litShare()),
                    tube);
        }

        Optional<ExclusionReason> exclusionReason(StarInView star) {
            double altitudeDeg = star.altitude().degrees();
            if (sun.isSunUp() && sun.distance(star.airless()).compareTo(SunGuard.KEEP_AWAY) < 0) {
                return Optional.of(ExclusionReason.NEAR_SUN);
            }
            if (altitudeDeg < LOWEST_DEG
                    || altitudeDeg > HIGHEST_DEG
                    || star.place().declination().abs().degrees() > FARTHEST_FROM_EQUATOR_DEG) {
                return Optional.of(ExclusionReason.AWKWARD);
            }
            if (!reach.canReach(star.place())) {
                return Optional.of(ExclusionReason.OUT_OF_REACH);
            }
            if (moon.altitude().radians() > 0
                    && separation(moon, star.airless()).compareTo(moonKeepAway) < 0) {
                return Optional.of(ExclusionReason.NEAR_MOON);
            }
            boolean isSeen =
                    isSeenByEye(star) || star.magnitude() <= FaintestStar.through(tube, star.airless(), sun.sun());
            return isSeen ? Optional.empty() : Optional.of(ExclusionReason.SKY_TOO_BRIGHT);
        }

        boolean isSeenByEye(StarInView star) {
            return star.magnitude() <= FaintestStar.byEye(star.airless(), sun.sun());
        }

        private static Angle separation(AirlessDirection one, AirlessDirection other) {
            return new Angle(Vector3D.angle(one.enu(), other.enu()));
        }
    }

    static StarCandidates of(StarsInView stars, PointingLimits reach, ObservingMoment moment, Instrument tube) {
        Circumstances now = Circumstances.of(reach, moment, tube);
        List<StarCandidate> usable = new ArrayList<>();
        Map<ExclusionReason, Integer> exclusions = new EnumMap<>(ExclusionReason.class);
        for (StarInView star : stars.up()) {
            now.exclusionReason(star)
                    .ifPresentOrElse(
                            exclusionReason -> exclusions.merge(exclusionReason, 1, Integer::sum),
                            () -> usable.add(candidate(star, stars, now.isSeenByEye(star))));
        }
        usable.sort(Comparator.comparingDouble(StarCandidate::penalty));
        return new StarCandidates(usable, exclusions);
    }

    long seenByEye() {
        return usable.stream().filter(StarCandidate::isSeenByEye).count();
    }

    private static StarCandidate candidate(StarInView star, StarsInView stars, boolean isSeenByEye) {
        boolean isBrightestAround = stars.isBrightestWithin(star, REGION);
        boolean isEasilyMistaken =
                !stars.lookalikes(star, MISTAKEN_WITHIN, MISTAKEN_MAGNITUDES).isEmpty();
        double altitudeDeg = star.altitude().degrees();
        double outsideDeg =
                Math.max(0, Math.max(PREFERRED_LOWEST_DEG - altitudeDeg, altitudeDeg - PREFERRED_HIGHEST_DEG));
        double slowDeg = Math.max(0, star.place().declination().abs().degrees() - SLOW_FROM_EQUATOR_DEG);
        double farDeg = Math.max(0, star.place().hourAngle().abs().degrees() - FAR_ROUND_DEG);
        // In a bright sky each magnitude counts double, because fainter stars have less margin.
        double perMagnitude = isSeenByEye ? 0.3 : 0.6;
        double penalty = perMagnitude * Math.max(0, star.magnitude())
                + (isBrightestAround ? 0 : 0.3)
                + (isEasilyMistaken ? 0.15 : 0)
                + (isSeenByEye ? 0 : 0.8)
                + 0.1 * outsideDeg
                + 0.02 * slowDeg
                + 0.01 * farDeg;
        return new StarCandidate(star, isSeenByEye, isBrightestAround, penalty);
    }
}
