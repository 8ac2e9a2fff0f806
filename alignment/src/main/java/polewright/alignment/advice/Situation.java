package polewright.alignment.advice;

import java.util.List;
import java.util.Set;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.fix.Fix;
import polewright.mount.rig.Rig;

/**
 * All that advice depends on.
 *
 * @param clamped whether the clamps are tight
 * @param sinceClamp what has been seen since they were tightened
 * @param alreadyRead compass, scale or shadow, if they have been read since the tripod was last set down: reading them
 *     again would only bring the same errors again
 * @param daylight what the Sun lets be sighted
 * @param stars bright stars that are up, the pole star among them; when none are given, ideal ones are assumed
 * @param isTurnUnseen whether a screw was turned and nothing was sighted by the sky since
 * @param ruledOut what cannot be taken now, as the observer said: it is not advised
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

    /** A situation under a sky that is not known: ideal stars are assumed. */
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

    /** The same with a star wherever one is wanted. */
    Situation withIdealStars() {
        return new Situation(
                rig, fix, allowance, clamped, sinceClamp, alreadyRead, daylight, List.of(), isTurnUnseen, ruledOut);
    }

    /** The same under the sky of another moment, with nothing ruled out and the whole rig at hand. */
    public Situation under(Daylight light, List<AdvisedStar> up) {
        return new Situation(
                fix.rig(), fix, allowance, clamped, sinceClamp, alreadyRead, light, up, isTurnUnseen, Set.of());
    }
}
