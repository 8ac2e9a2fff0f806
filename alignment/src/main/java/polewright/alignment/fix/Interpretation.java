package polewright.alignment.fix;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One interpretation of the night: which sightings are believed, and the resulting solution.
 *
 * @param smoother for solving the same night with other sightings believed
 * @param night the solution
 * @param sightings all of the night's sightings
 * @param setAside those that are not believed
 * @param inConflict those of them that contradict each other with nothing to decide between them
 * @param surcharge prior cost of its assumptions, in units of χ²; 0 when the rig is used as described
 */
record Interpretation(
        NightSmoother smoother,
        SmoothedNight night,
        List<Step.Sighted> sightings,
        Set<Long> setAside,
        Set<Long> inConflict,
        double surcharge) {
    // Two places of the axis within one sigma of each other lead to the same turns.
    private static final double MATTERS_SQUARED_SIGMAS = 1;
    private static final double LEAST_FACTOR = 0.25;

    /** The χ² above which a sighting is an outlier. */
    static double limit(Step.Sighted sighted) {
        return ChiSquareLimits.onceInAThousand(sighted.model().size());
    }

    /**
     * Whether everything is believed, including the rig, and the total χ² is within its limit. (Two similar sightings
     * before a turn and two after it can be inconsistent without any one of them being an outlier.)
     */
    boolean isUnremarkable() {
        return setAside.isEmpty() && surcharge == 0 && night.chiSquared() <= mostByChance() && doScrewsTurnTheAxis();
    }

    /**
     * Whether each screw has roughly the expected effect. The normal distribution of its gain extends to zero, but a
     * real thread does not: a turn without effect was not made, or was made with the other screw.
     */
    boolean doScrewsTurnTheAxis() {
        ScrewGains gains = night.last().gains();
        return gains.azimuthFactor() > LEAST_FACTOR && gains.altitudeFactor() > LEAST_FACTOR;
    }

    /** Whether the fit is so good that no other explanation could improve it. */
    boolean isUnsuspicious() {
        return isUnremarkable()
                && (night.chiSquared() <= ChiSquareLimits.onceInTwenty(figures(sightings))
                        || night.chiSquared() <= Contradictions.HUNDRED_TO_ONE);
    }

    /** Whether other moves could make everything fit: not if sightings within one stationary interval disagree. */
    boolean mayBecomeUnremarkable() {
        return smoother.remainder(night, Set.of()) <= mostByChance();
    }

    private double mostByChance() {
        return mostByChance(sightings);
    }

    /** The total χ² of these sightings that chance exceeds once in 1000. */
    static double mostByChance(List<Step.Sighted> sightings) {
        return ChiSquareLimits.onceInAThousand(figures(sightings));
    }

    private static int figures(List<Step.Sighted> sightings) {
        return sightings.stream().mapToInt(s -> s.model().size()).sum();
    }

    /** χ² of the night plus the limit for each sighting that is not believed; lower is more likely. */
    double cost() {
        return surcharge
                + night.chiSquared()
                + sightings.stream()
                        .filter(s -> setAside.contains(s.seq()))
                        .mapToDouble(Interpretation::costOfNotBelieving)
                        .sum();
    }

    /**
     * Frames cannot be misread or mistyped, so they are assumed wrong a hundred times less often than manual entries.
     */
    private static double costOfNotBelieving(Step.Sighted sighted) {
        return limit(sighted) + (sighted.sighting().isEnteredByHand() ? 0 : Contradictions.HUNDRED_TO_ONE);
    }

    /**
     * Lower bound on the cost of any interpretation that sets aside these sightings and more, whatever the moves were.
     */
    double leastCost() {
        return cost() - night.chiSquared() + smoother.remainder(night, setAside);
    }

    /** χ² of a sighting against the other believed sightings. */
    double innovation(Step.Sighted sighted) {
        AxisState state = stateFor(sighted);
        LinearisedSighting line = line(sighted);
        return setAside.contains(sighted.seq()) ? line.squaredInnovation(state) : line.squaredInnovationWithout(state);
    }

    /** The smoothed state in the interval of a sighting. */
    AxisState stateFor(Step.Sighted sighted) {
        return smoother.stateFor(sighted, night);
    }

    /** A sighting linearised about the smoothed state in its interval. */
    LinearisedSighting line(Step.Sighted sighted) {
        return smoother.line(sighted, night);
    }

    /**
     * Whether the choice between conflicting sightings affects where the axis is now. Once the axis has been turned and
     * sighted again, a conflict about where it was before no longer matters.
     */
    boolean conflictMatters() {
        List<AxisState> believingOne = believingOneInConflict()
                .map(interpretation -> interpretation.night().last())
                .toList();
        return believingOne.stream().anyMatch(one -> believingOne.stream().anyMatch(other -> differ(one, other)));
    }

    /** For each of the conflicting sightings, the night with it believed; the night unchanged if there are none. */
    Stream<Interpretation> believingOneInConflict() {
        return inConflict.isEmpty()
                ? Stream.of(this)
                : inConflict.stream()
                        .map(seq -> settingAside(setAside.stream()
                                .filter(other -> !other.equals(seq))
                                .collect(Collectors.toSet())));
    }

    /** Whether another interpretation puts the axis in a different place now. */
    boolean differsNowFrom(Interpretation other) {
        return differ(night.last(), other.night.last());
    }

    private static boolean differ(AxisState one, AxisState other) {
        return one.offsetCovariance().normalisedSquare(one.offset().minus(other.offset())) > MATTERS_SQUARED_SIGMAS;
    }

    /** A similar night with the rig as described and the same sightings set aside. */
    Interpretation settingAsideIn(NightSmoother other) {
        return new Interpretation(other, other.solve(setAside, night), sightings, setAside, inConflict, 0);
    }

    /**
     * For each sighting that is set aside, the night with it believed, solved in one pass about the present solution.
     */
    Map<Step.Sighted, SmoothedNight> believingEach() {
        Map<Step.Sighted, SmoothedNight> nights = new HashMap<>();
        for (Step.Sighted sighted : sightings) {
            if (setAside.contains(sighted.seq())) {
                Set<Long> others = new HashSet<>(setAside);
                others.remove(sighted.seq());
                nights.put(sighted, smoother.glance(others, night));
            }
        }
        return nights;
    }

    /** The same night with other sightings set aside. */
    Interpretation settingAside(Set<Long> others) {
        return new Interpretation(
                smoother, smoother.solve(others, night), sightings, Set.copyOf(others), inConflict, surcharge);
    }
}
