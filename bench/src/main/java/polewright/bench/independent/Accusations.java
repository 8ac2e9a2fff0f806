package polewright.bench.independent;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import polewright.axis.fix.Agreement;
import polewright.axis.fix.Fix;
import polewright.night.NightState;

/**
 * What a fix finds fault with.
 *
 * @param setAside the numbers of sightings that are not used
 * @param isInDoubt whether the fix as a whole is
 * @param texts every cause and reason that is named
 */
record Accusations(Set<Long> setAside, boolean isInDoubt, List<String> texts) {
    static Accusations of(NightState night) {
        Fix fix = night.fix();
        Set<Long> setAside = new TreeSet<>();
        List<String> texts = new ArrayList<>();
        if (fix instanceof Fix.Dubious dubious) {
            texts.add(dubious.reason());
        }
        for (Agreement agreement : fix.agreements()) {
            if (agreement.contradictory()) {
                setAside.add(agreement.seq());
            }
            agreement
                    .likelyCause()
                    .ifPresent(cause -> texts.add("#" + agreement.seq() + " " + agreement.kind() + ": " + cause));
        }
        return new Accusations(setAside, fix instanceof Fix.Dubious, List.copyOf(texts));
    }

    boolean isAny() {
        return isInDoubt || !setAside.isEmpty();
    }
}
