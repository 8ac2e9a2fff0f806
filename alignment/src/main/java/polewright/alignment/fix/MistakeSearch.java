package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import polewright.mount.rig.Rig;
import polewright.sky.place.Weather;

/**
 * Looks for what may have been entered wrongly in a night that does not fit as it was told.
 *
 * @param found ways to explain it, the likeliest first; those a hundred times less likely than the first are left out
 * @param others more of them, which only tell whether a sighting that is set aside is wrong
 */
record MistakeSearch(List<Candidate> found, List<Candidate> others) {
    /** More than a night by eye has; each costs some thirty solutions. */
    static final int MOST_STEPS_READ_AGAIN = 48;
    // A wedge may be farther from its figures than its owner believes (common practice).
    private static final double REAL_SCREWS = 2;

    /**
     * What can be found.
     *
     * @param learned the rig with its screws going as the night shows
     * @param asTold the night as told, with what does not fit set aside
     */
    static MistakeSearch in(CondensedPast past, Weather weather, Rig learned, List<Step> steps, Interpretation asTold) {
        boolean settled = asTold.night().settled();
        if (settled && asTold.isUnsuspicious()) {
            return new MistakeSearch(List.of(Candidate.asTold(asTold)), List.of());
        }
        List<Candidate> all = new ArrayList<>();
        List<Candidate> others = new ArrayList<>();
        if (settled) {
            asTold.believingOneOfTheAccused().map(Candidate::asTold).forEach(all::add);
            believingOneMore(asTold).forEach(others::add);
        }
        if (!settled || !asTold.isUnremarkable()) {
            for (TurnSuspects.Suspected suspected : TurnSuspects.of(past.site(), learned, steps, asTold)) {
                boolean isWorthNaming = TurnSuspects.isWorthNaming(asTold, suspected);
                (isWorthNaming ? all : others)
                        .add(Candidate.of(suspected.mistake(), suspected.account(), surcharge(suspected)));
            }
        }
        // What is condensed cannot be read again.
        if (past.left().isEmpty() && steps.size() <= MOST_STEPS_READ_AGAIN) {
            NightReadAgain again =
                    NightReadAgain.of(past, weather, steps, asTold, DoubtedScrews.worse(learned, REAL_SCREWS));
            List<Candidate> told = List.copyOf(all);
            again.misread().forEach(candidate -> (isOneThatIsNotUsed(candidate, told) ? others : all).add(candidate));
            again.unlogged().forEach(candidate -> (again.isWorthNaming(candidate) ? all : others).add(candidate));
        }
        if (all.isEmpty()) {
            return new MistakeSearch(List.of(Candidate.asTold(asTold)), List.of());
        }
        all.sort(Comparator.comparingDouble(Candidate::cost));
        double ruledOut = all.get(0).cost() + Contradictions.HUNDRED_TO_ONE;
        return new MistakeSearch(
                all.stream().takeWhile(c -> c.cost() < ruledOut).toList(), List.copyOf(others));
    }

    /** A slip fits anything between nothing and all, as a sighting does that is wrong for no reason that can be named. */
    private static double surcharge(TurnSuspects.Suspected suspected) {
        return Rereadings.SELDOM + (suspected.isExact() ? 0 : Candidate.NAMELESS);
    }

    /** The night with one of those believed that are set aside, for each but the accused: theirs are found already. */
    private static Stream<Candidate> believingOneMore(Interpretation asTold) {
        return asTold.setAside().stream()
                .filter(seq -> !asTold.accusedAlike().contains(seq))
                .map(seq -> {
                    Set<Long> others = new HashSet<>(asTold.setAside());
                    others.remove(seq);
                    return Candidate.asTold(asTold.settingAside(others));
                });
    }

    /** Why a sighting is wrong that is not used anyway makes no difference to the axis. */
    private static boolean isOneThatIsNotUsed(Candidate candidate, List<Candidate> asTold) {
        return candidate.mistake().orElse(null) instanceof Mistake.SightingMisread misread
                && asTold.stream()
                        .anyMatch(c ->
                                c.mistake().isEmpty() && c.account().setAside().contains(misread.seq()));
    }
}
