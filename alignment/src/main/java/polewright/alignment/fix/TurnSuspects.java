package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * Turns that may have been logged wrongly when sightings do not fit: made in the wrong direction, with the wrong screw,
 * not at all, or with a screw that slipped.
 */
final class TurnSuspects {
    // A turn is logged wrongly about as seldom as a sighting. If only one sighting contradicts it, it no longer matters
    // which of the two is wrong once the axis has been sighted again, unless the screw gains would be learned wrongly.
    private static final double MORE_THAN_ONE_SIGHTING =
            ChiSquareLimits.onceInAThousand(1) + Contradictions.HUNDRED_TO_ONE;
    private static final double TIMES_ITS_REACH = 5;
    private static final Angle FARTHEST = Angle.ofDegrees(30);
    // A turn logged in the wrong direction also changes its screw's last direction, and so whether the next turn had
    // backlash.
    private static final double PLAY_MAY_TELL = 3;
    private static final double LEAST_GAIN = Contradictions.HUNDRED_TO_ONE - PLAY_MAY_TELL;
    private static final double HARDLY_MOVED = 0.7;
    private static final double GAIN_AT_A_GLANCE = LEAST_GAIN - 2;
    private static final double MARGIN_AT_A_GLANCE = 1.2;
    // A suspicion is dropped once the sightings it has set aside cost more than it can gain plus this margin: three
    // sightings that may come back when a worse one has gone.
    private static final double MAY_BE_TAKEN_BACK = 3 * ChiSquareLimits.onceInAThousand(1);

    private TurnSuspects() {}

    /**
     * One hypothesis of what was turned instead of what was entered.
     *
     * @param entered the turn as entered
     * @param meant the step that it may have been
     * @param surcharge prior cost of further assumptions, in units of χ²
     * @param words completes "it would fit if …"
     */
    private record Suspicion(Step.Turned entered, Step meant, double surcharge, String words) {
        static Suspicion instead(Step.Turned entered, HandTurns azimuth, HandTurns altitude, String words) {
            return new Suspicion(entered, new Step.Turned(entered.seq(), azimuth, altitude), 0, words);
        }
    }

    /**
     * A turn that may not have been made as entered.
     *
     * @param interpretation the night with the turn corrected
     * @param isExact whether the correction fixes how far the axis moved
     */
    record Suspected(Mistake.TurnMistaken mistake, Interpretation interpretation, boolean isExact) {}

    private record Weighed(Suspicion suspicion, Interpretation interpretation) {
        /** Empty if the implied fraction does not suggest a slip. */
        Optional<Suspected> suspected(Site site, Rig rig) {
            if (suspicion.meant() instanceof Step.Slipped slipped) {
                return SlippedFraction.of(interpretation, slipped, site, rig)
                        .words()
                        .map(share -> suspected(suspicion.words() + share + " of its turns took effect", false));
            }
            return Optional.of(suspected(suspicion.words(), true));
        }

        private Suspected suspected(String words, boolean isExact) {
            return new Suspected(
                    new Mistake.TurnMistaken(suspicion.entered().seq(), suspicion.meant(), words),
                    interpretation,
                    isExact);
        }
    }

    /**
     * The turns that may not have been made as entered, where that is no less likely than setting sightings aside; if
     * none are set aside, only with odds of 100 to 1. The most likely first.
     *
     * @param baseline the night with every turn as entered
     */
    static List<Suspected> of(Site site, Rig rig, List<Step> steps, Interpretation baseline) {
        if (steps.stream().noneMatch(Step.Turned.class::isInstance)) {
            return List.of();
        }
        NightSmoother smoother = baseline.smoother().with(rig);
        SmoothedNight believingAll = smoother.solve(Set.of());
        Court court = new Court(baseline, smoother, believingAll, baseline.believingEach());
        return steps.stream()
                .filter(Step.Turned.class::isInstance)
                .map(Step.Turned.class::cast)
                .flatMap(turned -> weighed(site, rig, turned, court))
                .filter(w -> w.interpretation().night().converged())
                .filter(w -> baseline.cost() - w.interpretation().cost() > leastGain(baseline))
                .sorted(Comparator.comparingDouble(w -> w.interpretation().cost()))
                .flatMap(w -> w.suspected(site, rig).stream())
                .toList();
    }

    /**
     * What every suspicion is compared with.
     *
     * @param baseline the best interpretation with every turn as entered
     * @param smoother for solving the night with one turn changed
     * @param believingAll the night with the rig as described and no sighting set aside
     * @param believingEach for each sighting set aside, the night with it believed, solved in one pass
     */
    private record Court(
            Interpretation baseline,
            NightSmoother smoother,
            SmoothedNight believingAll,
            Map<Step.Sighted, SmoothedNight> believingEach) {
        /** The night with one turn replaced by a free displacement within its reach. */
        NightSmoother freeing(Step.Turned entered, Rig rig) {
            return smoother.with(new Step.Shifted(entered.seq(), reach(entered, rig)), entered);
        }

        /**
         * Whether a turn is cleared by the cheapest test: as {@link #clearsWithoutSearch}, but with sightings
         * linearised and a margin for that. Freeing the turn lowers the χ² of a sighting set aside by the extra gain
         * with that sighting believed.
         */
        boolean clearsLinearised(Step.Turned entered, Rig rig) {
            if (baseline.surcharge() > 0 || !baseline.night().converged()) {
                return false;
            }
            Angle reach = reach(entered, rig);
            double gain = baseline.night().gainOfFreedom(entered, reach);
            return gain <= GAIN_AT_A_GLANCE
                    && believingEach.entrySet().stream().allMatch(each -> {
                        double innovation = baseline.innovation(each.getKey());
                        double freed = innovation + gain - each.getValue().gainOfFreedom(entered, reach);
                        return freed
                                > MARGIN_AT_A_GLANCE
                                        * Math.max(Interpretation.limit(each.getKey()), HARDLY_MOVED * innovation);
                    });
        }

        /**
         * Whether a turn is cleared without a search: even with a free displacement the night fits hardly better, and
         * every sighting set aside remains about as far from fitting.
         */
        boolean clearsWithoutSearch(NightSmoother freed) {
            Interpretation same = baseline.settingAsideIn(freed);
            return same.night().converged()
                    && gain(same) <= LEAST_GAIN
                    && same.sightings().stream()
                            .filter(s -> baseline.setAside().contains(s.seq()))
                            .allMatch(s -> same.innovation(s)
                                    > Math.max(Interpretation.limit(s), HARDLY_MOVED * baseline.innovation(s)));
        }

        double gain(Interpretation other) {
            return baseline.cost() - other.cost();
        }

        /** Whether freeing the turn set aside no new sightings; otherwise they were set aside in an unlucky order. */
        boolean isConclusive(Interpretation freed) {
            return freed.night().converged() && baseline.setAside().containsAll(freed.setAside());
        }

        /** Wide enough to cost almost nothing wherever these turns may have moved the axis, but no wider. */
        private Angle reach(Step.Turned entered, Rig rig) {
            Angle altitude = smoother.prior().altitude();
            double turns = Math.abs(entered.azimuthTurns()) + Math.abs(entered.altitudeTurns());
            double most = Math.max(
                    Math.abs(rig.azimuthScrew().move(turns, altitude).radians()),
                    Math.abs(rig.altitudeScrew().move(turns, altitude).radians()));
            return new Angle(Math.min(FARTHEST.radians(), TIMES_ITS_REACH * most));
        }

        Optional<Weighed> weigh(Suspicion suspicion, Interpretation freed) {
            double costLimit = baseline.cost() - leastGain(baseline) - suspicion.surcharge() + MAY_BE_TAKEN_BACK;
            boolean isConclusive = isConclusive(freed);
            return Contradictions.weighUnless(
                            smoother.with(suspicion.meant(), suspicion.entered()),
                            believingAll,
                            suspicion.surcharge(),
                            interpretation -> (isConclusive
                                            ? freed.cost() + spent(interpretation, freed)
                                            : interpretation.leastCost())
                                    > costLimit)
                    .map(interpretation -> new Weighed(suspicion, interpretation));
        }

        /** Lower bound on the cost of setting aside sightings that fit while the turn is free. */
        private static double spent(Interpretation interpretation, Interpretation freed) {
            return interpretation.sightings().stream()
                    .filter(s -> interpretation.setAside().contains(s.seq())
                            && !freed.setAside().contains(s.seq()))
                    .mapToDouble(s -> Math.max(0, Interpretation.limit(s) - freed.innovation(s)))
                    .sum();
        }
    }

    /**
     * The suspicions about one turn, if it needs a closer look. No hypothesis about a turn can fit better than a free
     * displacement, so one test clears most turns of a night.
     */
    private static Stream<Weighed> weighed(Site site, Rig rig, Step.Turned entered, Court court) {
        if (court.clearsLinearised(entered, rig)) {
            return Stream.empty();
        }
        NightSmoother freeing = court.freeing(entered, rig);
        if (court.clearsWithoutSearch(freeing)) {
            return Stream.empty();
        }
        Interpretation freed = Contradictions.forgiving(freeing, court.believingAll());
        return court.isConclusive(freed) && court.gain(freed) <= LEAST_GAIN
                ? Stream.empty()
                : suspicions(entered, site, rig).flatMap(s -> court.weigh(s, freed).stream());
    }

    /** If nothing is set aside, a suspicion must make the night 100 times more likely. */
    private static double leastGain(Interpretation baseline) {
        return baseline.setAside().isEmpty() ? Contradictions.HUNDRED_TO_ONE : 0;
    }

    /** Whether a turn is worth naming even though sightings could be wrong instead. */
    static boolean isWorthNaming(Interpretation asEntered, Suspected suspected) {
        double gained = asEntered.cost() - suspected.interpretation().cost();
        if (gained <= Contradictions.HUNDRED_TO_ONE) {
            return false;
        }
        boolean isAtStake = asEntered.surcharge() > 0 || asEntered.differsNowFrom(suspected.interpretation());
        // A slip can fit any fraction of the turns, so it has to explain more.
        return gained > MORE_THAN_ONE_SIGHTING || (isAtStake && suspected.isExact());
    }

    private static Stream<Suspicion> suspicions(Step.Turned entered, Site site, Rig rig) {
        HandTurns azimuth = entered.azimuth();
        HandTurns altitude = entered.altitude();
        List<Suspicion> suspicions = new ArrayList<>();
        if (!azimuth.isNone()) {
            suspicions.add(Suspicion.instead(
                    entered, azimuth.reversed(), altitude, "the azimuth screw moved the axis the opposite way"));
        }
        if (!altitude.isNone()) {
            suspicions.add(Suspicion.instead(
                    entered, azimuth, altitude.reversed(), "the altitude screw moved the axis the opposite way"));
        }
        if (!azimuth.isNone() && !altitude.isNone()) {
            suspicions.add(Suspicion.instead(
                    entered, azimuth.reversed(), altitude.reversed(), "both screws moved the axis the opposite way"));
        }
        suspicions.add(Suspicion.instead(entered, altitude, azimuth, "the other screw had been turned"));
        suspicions.add(Suspicion.instead(entered, HandTurns.NONE, HandTurns.NONE, "nothing had moved"));
        if (azimuth.net() != 0) {
            suspicions.add(new Suspicion(
                    entered,
                    new Step.Slipped(entered, Step.Slipped.Which.AZIMUTH),
                    SlippedFraction.surcharge(Math.sqrt(variance(site, rig, AxisState.AZIMUTH_GAIN))),
                    "the azimuth screw slipped: only about "));
        }
        if (altitude.net() != 0) {
            suspicions.add(new Suspicion(
                    entered,
                    new Step.Slipped(entered, Step.Slipped.Which.ALTITUDE),
                    SlippedFraction.surcharge(Math.sqrt(variance(site, rig, AxisState.ALTITUDE_GAIN))),
                    "the altitude screw slipped: only about "));
        }
        return suspicions.stream();
    }

    private static double variance(Site site, Rig rig, int index) {
        return AxisState.prior(site, rig).covariance(index, index);
    }
}
