package polewright.axis.fix;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import polewright.axis.rig.Rig;
import polewright.sky.place.Site;

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
    static final double HUNDRED_TO_ONE = 2 * Math.log(100);

    private Contradictions() {}

    static Account weigh(Site site, Rig rig, List<Step> steps) {
        return weigh(site, rig, steps, 0);
    }

    /** The same by a rig that is not quite what the user says, at a surcharge for assuming so. */
    static Account weigh(Site site, Rig rig, List<Step> steps, double surcharge) {
        List<Step.Sighted> sightings = steps.stream()
                .filter(Step.Sighted.class::isInstance)
                .map(Step.Sighted.class::cast)
                .toList();
        NightSmoother smoother = new NightSmoother(site, rig, steps);
        Account account = new Account(smoother, smoother.solve(Set.of()), sightings, Set.of(), Set.of(), surcharge);
        Set<Long> accused = new TreeSet<>();
        for (int round = 0; round < sightings.size(); round++) {
            List<Step.Sighted> worst = worst(account);
            if (worst.isEmpty()) {
                break;
            }
            if (worst.size() > 1) {
                worst.forEach(s -> accused.add(s.seq()));
            }
            account = account.settingAside(with(account.setAside(), worst.get(0).seq()));
        }
        return believingNeither(takingBack(account), accused);
    }

    /** Those that are worst beyond chance and cannot be told apart, the very worst first; of equals the newest. */
    private static List<Step.Sighted> worst(Account account) {
        List<Step.Sighted> worst = new ArrayList<>();
        double most = 0;
        for (Step.Sighted sighted : account.sightings()) {
            if (!account.setAside().contains(sighted.seq())) {
                double excess = account.innovation(sighted) - Account.limit(sighted);
                if (excess > 0 && excess >= most) {
                    most = excess;
                    worst.add(0, sighted);
                } else if (excess > 0) {
                    worst.add(sighted);
                }
            }
        }
        double close = most - HUNDRED_TO_ONE;
        worst.removeIf(s -> account.innovation(s) - Account.limit(s) <= close);
        return worst;
    }

    private static Account takingBack(Account account) {
        Account better = account;
        for (Step.Sighted sighted : account.sightings()) {
            if (better.setAside().contains(sighted.seq()) && better.innovation(sighted) <= Account.limit(sighted)) {
                better = better.settingAside(without(better.setAside(), sighted.seq()));
            }
        }
        return better;
    }

    private static Account believingNeither(Account account, Set<Long> accused) {
        if (accused.stream().noneMatch(account.setAside()::contains)) {
            return account;
        }
        Set<Long> setAside = new HashSet<>(account.setAside());
        // Believing the one would be a guess.
        boolean more = setAside.addAll(accused);
        Account neither = more ? account.settingAside(setAside) : account;
        return new Account(
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
