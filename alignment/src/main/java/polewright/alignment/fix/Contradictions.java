package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import polewright.mount.Odds;

/**
 * Which sightings of a night to believe.
 *
 * <p>A sighting is either as good as it says or simply wrong. Those are set aside whose removal takes more off the night's
 * χ² than chance allows once in a thousand, one at a time, the worst first; one that fits after all when others are gone
 * comes back. Of two that contradict each other with nothing to judge between them, neither is believed.
 */
final class Contradictions {
    /**
     * Two accounts are told apart when the night's χ² says with odds of a hundred to one which is right. Until then both
     * stand.
     */
    static final double HUNDRED_TO_ONE = Odds.HUNDRED_TO_ONE;

    private static final double FAR_BEYOND_CHANCE = 10;

    private Contradictions() {}

    static Interpretation weigh(NightSmoother smoother) {
        return weigh(smoother, 0);
    }

    /** The same from how the night looks at first. */
    static Interpretation weigh(NightSmoother smoother, ForwardPass firstGuess) {
        return weigh(first(smoother, smoother.solve(firstGuess), 0), account -> false)
                .orElseThrow();
    }

    /** The same by a rig that is not quite what the user says, at a surcharge for assuming so. */
    static Interpretation weigh(NightSmoother smoother, double surcharge) {
        return weigh(first(smoother, smoother.solve(Set.of()), surcharge), account -> false)
                .orElseThrow();
    }

    /** Whether all sightings together fit so badly, as it looks at first, that they never will. */
    static boolean isFarBeyondChance(NightSmoother smoother, ForwardPass firstGuess) {
        return firstGuess.chiSquared() > FAR_BEYOND_CHANCE * Interpretation.mostByChance(smoother.sightings());
    }

    /** The same, if nothing of it has to be set aside and the whole is unremarkable. */
    static Optional<Interpretation> believingAll(NightSmoother smoother) {
        // What does not fit by far at first does not even settle.
        ForwardPass firstGuess = smoother.firstGuess();
        if (isFarBeyondChance(smoother, firstGuess)) {
            return Optional.empty();
        }
        return Optional.of(first(smoother, smoother.solve(firstGuess), 0))
                .filter(account -> account.isUnremarkable() && worst(account).isEmpty());
    }

    /**
     * The same, given up on the way when it is beyond hope.
     *
     * @param hopeless asked of the account each time that it has one more sighting to set aside
     */
    static Optional<Interpretation> weighUnless(NightSmoother smoother, Predicate<Interpretation> hopeless) {
        return weighUnless(smoother, smoother.firstGuess(), hopeless);
    }

    /** The same from how the night looks at first. */
    static Optional<Interpretation> weighUnless(
            NightSmoother smoother, ForwardPass firstGuess, Predicate<Interpretation> hopeless) {
        return weigh(first(smoother, smoother.solve(firstGuess), 0), hopeless);
    }

    /**
     * The same of a night that is not much different from another.
     *
     * @param near a night that is not much different, with no sighting set aside
     * @param hopeless asked of the account each time that it has set one more sighting aside
     */
    static Optional<Interpretation> weighUnless(
            NightSmoother smoother, SmoothedNight near, double surcharge, Predicate<Interpretation> hopeless) {
        return weigh(first(smoother, smoother.solve(Set.of(), near), surcharge), hopeless);
    }

    /** The same, but of those that accuse each other the one that it suits is believed: for how well a night can fit. */
    static Interpretation forgiving(NightSmoother smoother, SmoothedNight near) {
        Interpretation account = first(smoother, smoother.solve(Set.of(), near), 0);
        for (int round = 0; round < account.sightings().size(); round++) {
            List<Step.Sighted> worst = worst(account);
            if (worst.isEmpty()) {
                break;
            }
            account = account.settingAside(with(account.setAside(), worst.get(0).seq()));
        }
        return takingBack(account);
    }

    private static Interpretation first(NightSmoother smoother, SmoothedNight believingAll, double surcharge) {
        return new Interpretation(smoother, believingAll, smoother.sightings(), Set.of(), Set.of(), surcharge);
    }

    private static Optional<Interpretation> weigh(Interpretation believingAll, Predicate<Interpretation> hopeless) {
        Interpretation account = believingAll;
        Set<Long> accused = new TreeSet<>();
        for (int round = 0; round < account.sightings().size(); round++) {
            List<Step.Sighted> worst = worst(account);
            if (worst.isEmpty()) {
                break;
            }
            if (worst.size() > 1) {
                worst.forEach(s -> accused.add(s.seq()));
            }
            account = account.settingAside(with(account.setAside(), worst.get(0).seq()));
            if (hopeless.test(account)) {
                return Optional.empty();
            }
        }
        return Optional.of(believingNeither(takingBack(account), accused));
    }

    /** Those that are worst beyond chance and cannot be told apart, the very worst first; of equals the newest. */
    private static List<Step.Sighted> worst(Interpretation account) {
        List<Excess> beyondChance = new ArrayList<>();
        for (Step.Sighted sighted : account.sightings()) {
            if (!account.setAside().contains(sighted.seq())) {
                double excess = account.innovation(sighted) - Interpretation.limit(sighted);
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

    private static Interpretation takingBack(Interpretation account) {
        Interpretation better = account;
        for (Step.Sighted sighted : account.sightings()) {
            if (better.setAside().contains(sighted.seq())
                    && better.innovation(sighted) <= Interpretation.limit(sighted)) {
                better = better.settingAside(without(better.setAside(), sighted.seq()));
            }
        }
        return better;
    }

    private static Interpretation believingNeither(Interpretation account, Set<Long> accused) {
        if (accused.stream().noneMatch(account.setAside()::contains)) {
            return account;
        }
        Set<Long> setAside = new HashSet<>(account.setAside());
        // Believing the one would be a guess.
        boolean more = setAside.addAll(accused);
        Interpretation neither = more ? account.settingAside(setAside) : account;
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
