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
 * Searches for entries that may be wrong in a night that does not fit as entered.
 *
 * @param found the possible explanations, the most likely first; those 100 times less likely than the first are left
 *     out
 * @param others further explanations, used only to judge whether a sighting that is set aside is wrong
 */
record MistakeSearch(List<Candidate> found, List<Candidate> others) {
    /** More than a night by eye has; each costs some thirty solutions. */
    static final int MOST_STEPS_READ_AGAIN = 48;
    // The gains of a real wedge may differ from the rig description by more than the owner believes (common practice).
    private static final double REAL_SCREWS = 2;

    /**
     * Searches a night.
     *
     * @param learned the rig with the screw directions that the night has shown
     * @param asEntered the night as entered, with outliers set aside
     */
    static MistakeSearch in(
            CondensedPast past, Weather weather, Rig learned, List<Step> steps, Interpretation asEntered) {
        boolean converged = asEntered.night().converged();
        if (converged && asEntered.isUnsuspicious()) {
            return new MistakeSearch(List.of(Candidate.asEntered(asEntered)), List.of());
        }
        List<Candidate> all = new ArrayList<>();
        List<Candidate> others = new ArrayList<>();
        if (converged) {
            asEntered.believingOneInConflict().map(Candidate::asEntered).forEach(all::add);
            believingOneMore(asEntered).forEach(others::add);
        }
        if (!converged || !asEntered.isUnremarkable()) {
            for (TurnSuspects.Suspected suspected : TurnSuspects.of(past.site(), learned, steps, asEntered)) {
                boolean isWorthNaming = TurnSuspects.isWorthNaming(asEntered, suspected);
                (isWorthNaming ? all : others)
                        .add(Candidate.of(suspected.mistake(), suspected.interpretation(), surcharge(suspected)));
            }
        }
        // Condensed steps cannot be reinterpreted.
        if (past.left().isEmpty() && steps.size() <= MOST_STEPS_READ_AGAIN) {
            NightReadAgain again =
                    NightReadAgain.of(past, weather, steps, asEntered, DoubtedScrews.worse(learned, REAL_SCREWS));
            List<Candidate> soFar = List.copyOf(all);
            again.misread().forEach(candidate -> (isAlreadyUnused(candidate, soFar) ? others : all).add(candidate));
            again.unlogged().forEach(candidate -> (again.isWorthNaming(candidate) ? all : others).add(candidate));
        }
        if (all.isEmpty()) {
            return new MistakeSearch(List.of(Candidate.asEntered(asEntered)), List.of());
        }
        all.sort(Comparator.comparingDouble(Candidate::cost));
        double ruledOut = all.get(0).cost() + Contradictions.HUNDRED_TO_ONE;
        return new MistakeSearch(
                all.stream().takeWhile(c -> c.cost() < ruledOut).toList(), List.copyOf(others));
    }

    /**
     * A slipped screw can fit any share of its turns, so it pays the same cost as a sighting wrong for an unknown
     * reason.
     */
    private static double surcharge(TurnSuspects.Suspected suspected) {
        return Rereadings.SELDOM + (suspected.isExact() ? 0 : Candidate.NAMELESS);
    }

    /**
     * For each sighting set aside, the night with it believed; the conflicting ones are omitted, being found already.
     */
    private static Stream<Candidate> believingOneMore(Interpretation asEntered) {
        return asEntered.setAside().stream()
                .filter(seq -> !asEntered.inConflict().contains(seq))
                .map(seq -> {
                    Set<Long> others = new HashSet<>(asEntered.setAside());
                    others.remove(seq);
                    return Candidate.asEntered(asEntered.settingAside(others));
                });
    }

    /** Whether it only explains a sighting that is not used anyway, which makes no difference to the axis. */
    private static boolean isAlreadyUnused(Candidate candidate, List<Candidate> asEntered) {
        return candidate.mistake().orElse(null) instanceof Mistake.SightingMisread misread
                && asEntered.stream()
                        .anyMatch(c -> c.mistake().isEmpty()
                                && c.interpretation().setAside().contains(misread.seq()));
    }
}
