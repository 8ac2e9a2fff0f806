package polewright.bench.independent;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.Fix;
import polewright.session.NightState;

/**
 * The faults that a fix reports.
 *
 * @param setAside the numbers of sightings reported as wrong
 * @param notUsed the numbers of sightings that are not used, though they may be right
 * @param isInDoubt whether the fix as a whole is
 * @param causes the mistake assumed by the likeliest explanation, and the likely causes of what is set aside
 * @param reason for the doubt, with all explanations
 */
record Accusations(
        Set<Long> setAside, Set<Long> notUsed, boolean isInDoubt, List<String> causes, Optional<String> reason) {
    static Accusations of(NightState night) {
        Fix fix = night.fix();
        Set<Long> setAside = new TreeSet<>();
        Set<Long> notUsed = new TreeSet<>();
        List<String> causes = new ArrayList<>();
        fix.explanations().stream()
                .limit(1)
                .flatMap(likeliest -> likeliest.mistake().stream())
                .forEach(mistake -> causes.add(mistake.words()));
        for (Agreement agreement : fix.agreements()) {
            if (agreement.contradictory()) {
                (agreement.accused() ? setAside : notUsed).add(agreement.seq());
            }
            agreement
                    .likelyCause()
                    .ifPresent(cause -> causes.add("#" + agreement.seq() + " " + agreement.kind() + ": " + cause));
        }
        return new Accusations(
                setAside,
                notUsed,
                fix instanceof Fix.Dubious,
                List.copyOf(causes),
                fix instanceof Fix.Dubious dubious ? Optional.of(dubious.reason()) : Optional.empty());
    }

    boolean isAny() {
        return isInDoubt || !setAside.isEmpty() || !notUsed.isEmpty() || !causes.isEmpty();
    }
}
