package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import polewright.mount.EvidenceThreshold;

/**
 * Outlier rejection: decides which sightings of a night to believe.
 *
 * <p>A sighting is either as accurate as stated or simply wrong. Sightings are set aside one at a time, the worst
 * first, while removing one lowers the night's χ² by more than the 1-in-1000 limit. One that fits again after others
 * have gone comes back. If two contradict each other and nothing decides between them, neither is believed.
 */
final class Contradictions {
    /**
     * The χ² difference at which one of two interpretations is ruled out. Until the odds reach 100 to 1, both are kept.
     */
    static final double HUNDRED_TO_ONE = EvidenceThreshold.HUNDRED_TO_ONE;

    private static final double FAR_BEYOND_CHANCE = 10;

    private Contradictions() {}

    static Interpretation weigh(NightSmoother smoother) {
        return weigh(smoother, 0);
    }

    /** The same, starting from a first guess. */
    static Interpretation weigh(NightSmoother smoother, ForwardPass firstGuess) {
        return weigh(first(smoother, smoother.solve(firstGuess), 0), interpretation -> false)
                .orElseThrow();
    }

    /** The same with a rig that differs from the one described, at a surcharge for that assumption. */
    static Interpretation weigh(NightSmoother smoother, double surcharge) {
        return weigh(first(smoother, smoother.solve(Set.of()), surcharge), interpretation -> false)
                .orElseThrow();
    }

    /** Whether the first guess fits so badly that the sightings cannot all be right. */
    static boolean isFarBeyondChance(NightSmoother smoother, ForwardPass firstGuess) {
        return firstGuess.chiSquared() > FAR_BEYOND_CHANCE * Interpretation.mostByChance(smoother.sightings());
    }

    /** The night with every sighting believed; empty if one has to be set aside or the fit is not unremarkable. */
    static Optional<Interpretation> believingAll(NightSmoother smoother) {
        // A first guess that is this far off does not even converge.
        ForwardPass firstGuess = smoother.firstGuess();
        if (isFarBeyondChance(smoother, firstGuess)) {
            return Optional.empty();
        }
        return Optional.of(first(smoother, smoother.solve(firstGuess), 0))
                .filter(interpretation ->
                        interpretation.isUnremarkable() && worst(interpretation).isEmpty());
    }

    /**
     * The same, abandoned early when it cannot succeed.
     *
     * @param giveUp tested each time one more sighting has been set aside
     */
    static Optional<Interpretation> weighUnless(NightSmoother smoother, Predicate<Interpretation> giveUp) {
        return weighUnless(smoother, smoother.firstGuess(), giveUp);
    }

    /** The same, starting from a first guess. */
    static Optional<Interpretation> weighUnless(
            NightSmoother smoother, ForwardPass firstGuess, Predicate<Interpretation> giveUp) {
        return weigh(first(smoother, smoother.solve(firstGuess), 0), giveUp);
    }

    /**
     * The same, starting from the solution of a similar night.
     *
     * @param near the solution of a similar night with no sighting set aside
     * @param giveUp tested each time one more sighting has been set aside
     */
    static Optional<Interpretation> weighUnless(
            NightSmoother smoother, SmoothedNight near, double surcharge, Predicate<Interpretation> giveUp) {
        return weigh(first(smoother, smoother.solve(Set.of(), near), surcharge), giveUp);
    }

    /**
     * The best fit that a night allows: of sightings that contradict each other, those that fit better are believed.
     */
    static Interpretation forgiving(NightSmoother smoother, SmoothedNight near) {
        Interpretation interpretation = first(smoother, smoother.solve(Set.of(), near), 0);
        for (int round = 0; round < interpretation.sightings().size(); round++) {
            List<Step.Sighted> worst = worst(interpretation);
            if (worst.isEmpty()) {
                break;
            }
            interpretation = interpretation.settingAside(
                    with(interpretation.setAside(), worst.get(0).seq()));
        }
        return restoringThoseThatFit(interpretation);
    }

    private static Interpretation first(NightSmoother smoother, SmoothedNight believingAll, double surcharge) {
        return new Interpretation(smoother, believingAll, smoother.sightings(), Set.of(), Set.of(), surcharge);
    }

    private static Optional<Interpretation> weigh(Interpretation believingAll, Predicate<Interpretation> giveUp) {
        Interpretation interpretation = believingAll;
        Set<Long> accused = new TreeSet<>();
        for (int round = 0; round < interpretation.sightings().size(); round++) {
            List<Step.Sighted> worst = worst(interpretation);
            if (worst.isEmpty()) {
                break;
            }
            if (worst.size() > 1) {
                worst.forEach(s -> accused.add(s.seq()));
            }
            interpretation = interpretation.settingAside(
                    with(interpretation.setAside(), worst.get(0).seq()));
            if (giveUp.test(interpretation)) {
                return Optional.empty();
            }
        }
        return Optional.of(believingNeither(restoringThoseThatFit(interpretation), accused));
    }

    /** The worst outliers that χ² cannot rank against each other, the very worst first; of equals, the newest first. */
    private static List<Step.Sighted> worst(Interpretation interpretation) {
        List<Excess> beyondChance = new ArrayList<>();
        for (Step.Sighted sighted : interpretation.sightings()) {
            if (!interpretation.setAside().contains(sighted.seq())) {
                double excess = interpretation.innovation(sighted) - Interpretation.limit(sighted);
                if (excess > 0) {
                    beyondChance.add(0, new Excess(sighted, excess));
                }
            }
        }
        beyondChance.sort(Comparator.comparingDouble(Excess::excess).reversed());
        return beyondChance.stream()
                .takeWhile(e -> e.excess() > beyondChance.get(0).excess() - HUNDRED_TO_ONE)
                .map(Excess::sighted)
                .toList();
    }

    private record Excess(Step.Sighted sighted, double excess) {}

    private static Interpretation restoringThoseThatFit(Interpretation interpretation) {
        Interpretation better = interpretation;
        for (Step.Sighted sighted : interpretation.sightings()) {
            if (better.setAside().contains(sighted.seq())
                    && better.innovation(sighted) <= Interpretation.limit(sighted)) {
                better = better.settingAside(without(better.setAside(), sighted.seq()));
            }
        }
        return better;
    }

    private static Interpretation believingNeither(Interpretation interpretation, Set<Long> accused) {
        if (accused.stream().noneMatch(interpretation.setAside()::contains)) {
            return interpretation;
        }
        Set<Long> setAside = new HashSet<>(interpretation.setAside());
        // Believing either one would be a guess.
        boolean more = setAside.addAll(accused);
        Interpretation neither = more ? interpretation.settingAside(setAside) : interpretation;
        return new Interpretation(
                neither.smoother(),
                neither.night(),
                neither.sightings(),
                neither.setAside(),
                Set.copyOf(accused),
                neither.surcharge());
    }

    private static Set<Long> with(Set<Long> some, long another) {
        Set<Long> more = new HashSet<>(some);
        more.add(another);
        return more;
    }

    private static Set<Long> without(Set<Long> some, long one) {
        Set<Long> fewer = new HashSet<>(some);
        fewer.remove(one);
        return fewer;
    }
}
