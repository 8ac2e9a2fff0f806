package polewright.alignment.advice;

import java.util.List;
import java.util.Set;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.fix.Fix;
import polewright.mount.rig.Rig;

/**
 * Everything that the advice depends on.
 *
 * @param clamped whether the clamps are tight
 * @param sinceClamp what sightings have shown since they were tightened
 * @param alreadyRead which of compass, scale and shadow have been read since the tripod was last set down: reading them
 *     again would only repeat the same errors
 * @param daylight which sightings the Sun permits
 * @param stars bright stars above the horizon, including the pole star; if none are given, ideal ones are assumed
 * @param isTurnUnseen whether a screw was turned and the sky has not been sighted since
 * @param ruledOut kinds of sighting that the observer has ruled out for now; they are not advised
 */
public record Situation(
        Rig rig,
        Fix fix,
        Allowance allowance,
        boolean clamped,
        Confirmation sinceClamp,
        Set<SightingKind> alreadyRead,
        Daylight daylight,
        List<AdvisedStar> stars,
        boolean isTurnUnseen,
        Set<SightingKind> ruledOut) {
    public Situation {
        alreadyRead = Set.copyOf(alreadyRead);
        stars = List.copyOf(stars);
        ruledOut = Set.copyOf(ruledOut);
    }

    /** A situation without star positions: ideal stars are assumed. */
    public Situation(
            Rig rig,
            Fix fix,
            Allowance allowance,
            boolean clamped,
            Confirmation sinceClamp,
            Set<SightingKind> alreadyRead,
            Daylight daylight) {
        this(rig, fix, allowance, clamped, sinceClamp, alreadyRead, daylight, List.of(), false, Set.of());
    }

    /** The same with ideally placed stars. */
    Situation withIdealStars() {
        return new Situation(
                rig, fix, allowance, clamped, sinceClamp, alreadyRead, daylight, List.of(), isTurnUnseen, ruledOut);
    }

    /** The same at another time, with nothing ruled out and the whole rig available. */
    public Situation under(Daylight light, List<AdvisedStar> up) {
        return new Situation(
                fix.rig(), fix, allowance, clamped, sinceClamp, alreadyRead, light, up, isTurnUnseen, Set.of());
    }
}
