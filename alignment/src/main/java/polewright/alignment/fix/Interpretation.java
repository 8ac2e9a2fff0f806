package polewright.alignment.fix;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.TurnedFrames;

/**
 * One way of telling the night: which sightings it believes, and what that leads to.
 *
 * @param smoother for solving the same night with others believed
 * @param night the solution
 * @param sightings all of the night's sightings
 * @param setAside those that are not believed
 * @param accusedAlike those of them that contradict each other with nothing to judge between them
 * @param surcharge what this way of telling assumes besides, in units of χ²; 0 when the rig is taken at its word
 */
record Interpretation(
        NightSmoother smoother,
        SmoothedNight night,
        List<Step.Sighted> sightings,
        Set<Long> setAside,
        Set<Long> accusedAlike,
        double surcharge) {
    // Two places of the axis within one sigma of each other are the same for anybody who turns screws.
    private static final double MATTERS_SQUARED_SIGMAS = 1;
    private static final double LEAST_FACTOR = 0.25;

    /** Beyond this a sighting does not fit by chance. */
    static double limit(Step.Sighted sighted) {
        return ChiSquareLimits.onceInAThousand(sighted.model().size());
    }

    /**
     * Whether everything is believed, the rig too, and fits as well as chance allows. (Two like sightings before a turn and
     * two after it can be wrong together without any one of them standing out.)
     */
    boolean isUnremarkable() {
        return setAside.isEmpty() && surcharge == 0 && night.chiSquared() <= mostByChance() && doScrewsTurnTheAxis();
    }

    /**
     * Whether each screw does something like what was expected of it. A normal distribution of what it does reaches to
     * nothing at all, a thread does not: a turn without an effect was not made, or not with that screw.
     */
    boolean doScrewsTurnTheAxis() {
        ScrewGains gains = night.last().gains();
        return gains.azimuthFactor() > LEAST_FACTOR && gains.altitudeFactor() > LEAST_FACTOR;
    }

    /** Whether there is nothing in it that another telling could explain better. */
    boolean isUnsuspicious() {
        return isUnremarkable()
                && (night.chiSquared() <= ChiSquareLimits.onceInTwenty(figures(sightings))
                        || night.chiSquared() <= Contradictions.HUNDRED_TO_ONE);
    }

    /** Whether the moves of the night, were they others, could make everything fit: not if sightings of one stand quarrel. */
    boolean mayBecomeUnremarkable() {
        return smoother.remainder(night, Set.of()) <= mostByChance();
    }

    private double mostByChance() {
        return mostByChance(sightings);
    }

    /** The χ² of all these sightings together that chance exceeds once in a thousand. */
    static double mostByChance(List<Step.Sighted> sightings) {
        return ChiSquareLimits.onceInAThousand(figures(sightings));
    }

    private static int figures(List<Step.Sighted> sightings) {
        return sightings.stream().mapToInt(s -> s.model().size()).sum();
    }

    /** χ² of the night as told, with the limit for each sighting that is not believed: the less, the likelier. */
    double cost() {
        return surcharge
                + night.chiSquared()
                + sightings.stream()
                        .filter(s -> setAside.contains(s.seq()))
                        .mapToDouble(Interpretation::costOfNotBelieving)
                        .sum();
    }

    /** Frames cannot be misread or mistyped, so they are assumed wrong a hundred times less often than manual entries. */
    private static double costOfNotBelieving(Step.Sighted sighted) {
        boolean isEntered = !(sighted.sighting() instanceof TurnedFrames || sighted.sighting() instanceof FieldDrift);
        return limit(sighted) + (isEntered ? 0 : Contradictions.HUNDRED_TO_ONE);
    }

    /** No account that sets aside these and more can cost less, whatever the moves of the night were. */
    double leastCost() {
        return cost() - night.chiSquared() + smoother.remainder(night, setAside);
    }

    /** χ² of a sighting against the night as told; against the others alone if it is itself believed. */
    double innovation(Step.Sighted sighted) {
        AxisState state = stateFor(sighted);
        LinearisedSighting line = line(sighted);
        return setAside.contains(sighted.seq()) ? line.squaredInnovation(state) : line.squaredInnovationWithout(state);
    }

    /** The axis as it stood for a sighting. */
    AxisState stateFor(Step.Sighted sighted) {
        return smoother.stateFor(sighted, night);
    }

    /** A sighting about the axis as it stood for it. */
    LinearisedSighting line(Step.Sighted sighted) {
        return smoother.line(sighted, night);
    }

    /**
     * Whether it makes a difference to where the axis is now which of the accused is believed. Once it has been turned and
     * seen again, a quarrel about where it stood before is over.
     */
    boolean quarrelMatters() {
        List<AxisState> believingOne = believingOneOfTheAccused()
                .map(account -> account.night().last())
                .toList();
        return believingOne.stream().anyMatch(one -> believingOne.stream().anyMatch(other -> differ(one, other)));
    }

    /** The night with one of those that accuse each other believed, for each of them; as it is if none do. */
    Stream<Interpretation> believingOneOfTheAccused() {
        return accusedAlike.isEmpty()
                ? Stream.of(this)
                : accusedAlike.stream()
                        .map(seq -> settingAside(setAside.stream()
                                .filter(other -> !other.equals(seq))
                                .collect(Collectors.toSet())));
    }

    /** Whether the axis would now stand elsewhere by another account. */
    boolean differsNowFrom(Interpretation other) {
        return differ(night.last(), other.night.last());
    }

    private static boolean differ(AxisState one, AxisState other) {
        return one.offsetCovariance().normalisedSquare(one.offset().minus(other.offset())) > MATTERS_SQUARED_SIGMAS;
    }

    /** A night that is not much different, by the rig's word, with the same sightings set aside. */
    Interpretation settingAsideIn(NightSmoother other) {
        return new Interpretation(other, other.solve(setAside, night), sightings, setAside, accusedAlike, 0);
    }

    /** For each sighting that is set aside, how the night looks at first sight with it believed. */
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
                smoother, smoother.solve(others, night), sightings, Set.copyOf(others), accusedAlike, surcharge);
    }
}
