package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.mount.reach.PointingLimits;
import polewright.sky.InputRefused;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.body.SunGuard;
import polewright.sky.daylight.Instrument;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;

/**
 * Chooses the stars to align on at one moment.
 *
 * <pre>
 *   StarsInView ──▶ StarCandidates ──▶ StarSpread ──▶ SlewOrder ──▶ AlignmentOutcome
 *   what is up      what is usable     which few      which first
 * </pre>
 */
public final class AlignmentStars {
    /** Ordering more than this takes too long, and visual observers rarely centre more. */
    public static final int MOST = 8;

    public static final int USUAL = 3;

    private static final Duration STEP = Duration.ofMinutes(10);
    private static final Duration FINE_STEP = Duration.ofMinutes(1);
    private static final Duration LOOK_AHEAD = Duration.ofDays(1);
    // With the Sun higher than this no star is visible to the eye.
    private static final double NO_STARS_SUN_DEG = 3;

    private AlignmentStars() {}

    /**
     * The stars for the evening's site, rig and local horizon at its time.
     *
     * @param count number of stars, 1 to {@value #MOST}
     * @param tube the instrument used to find a star
     * @param from the body the tube points at now; empty is home
     */
    public static AlignmentOutcome of(Evening evening, int count, Instrument tube, Optional<SkyBody> from) {
        if (count < 1 || count > MOST) {
            throw new InputRefused(count + " alignment stars is outside 1 to " + MOST, "three suit most visual nights");
        }
        PointingLimits reach = evening.reach();
        ObservingMoment moment = evening.moment(evening.now());
        StarsInView stars = StarsInView.at(moment);
        StarCandidates candidates = StarCandidates.of(stars, reach, moment, tube);
        Optional<Instant> out =
                candidates.seenByEye() >= count ? Optional.empty() : visibleByEyeFrom(evening, reach, count, tube);
        boolean isSunUp = SunGuard.at(moment).isSunUp();
        StarSpread spread = StarSpread.over(reach, moment);
        Optional<HourAnglePlace> start = from.map(body -> moment.hourAngle(Ephemeris.apparent(body, moment)));
        List<StarCandidate> usable = new ArrayList<>(candidates.usable());
        while (!usable.isEmpty()) {
            List<StarCandidate> chosen = spread.best(usable, count);
            Optional<List<SlewOrder.Leg>> legs = SlewOrder.of(
                    moment,
                    evening.rig().kind(),
                    start,
                    chosen.stream().map(c -> c.seen().place()).toList());
            if (legs.isPresent()) {
                return new AlignmentOutcome.Chosen(
                        legs.get().stream()
                                .map(leg -> star(chosen.get(leg.star()), leg.move(), stars, moment))
                                .toList(),
                        evening.rig().kind().hasPolarAxis() ? Optional.of(spread.radius95(chosen)) : Optional.empty(),
                        isSunUp,
                        out);
            }
            // The Sun blocks the slew to one of them; without the least suitable, the rest may be reachable.
            usable.remove(chosen.get(chosen.size() - 1));
        }
        return new AlignmentOutcome.Nothing(
                candidates.exclusions(), !candidates.usable().isEmpty(), isSunUp, out);
    }

    private static AlignmentStar star(
            StarCandidate candidate, StarMove move, StarsInView stars, ObservingMoment moment) {
        return new AlignmentStar(
                candidate.seen(),
                candidate.isSeenByEye(),
                candidate.isBrightestAround(),
                StarSurroundings.of(candidate.seen(), stars, moment),
                move);
    }

    private static Optional<Instant> visibleByEyeFrom(
            Evening evening, PointingLimits reach, int count, Instrument tube) {
        Instant last = evening.now().plus(LOOK_AHEAD);
        for (Instant at = evening.now().plus(STEP); at.isBefore(last); at = at.plus(STEP)) {
            if (areVisible(evening, reach, count, tube, at)) {
                Instant fine = at.minus(STEP).plus(FINE_STEP);
                while (!areVisible(evening, reach, count, tube, fine)) {
                    fine = fine.plus(FINE_STEP);
                }
                return Optional.of(fine);
            }
        }
        return Optional.empty();
    }

    private static boolean areVisible(Evening evening, PointingLimits reach, int count, Instrument tube, Instant at) {
        ObservingMoment moment = evening.moment(at);
        boolean isDay = moment.airless(Ephemeris.apparent(SolarSystemBody.SUN, moment))
                        .altitude()
                        .degrees()
                > NO_STARS_SUN_DEG;
        return !isDay
                && StarCandidates.of(StarsInView.at(moment), reach, moment, tube)
                                .seenByEye()
                        >= count;
    }
}
