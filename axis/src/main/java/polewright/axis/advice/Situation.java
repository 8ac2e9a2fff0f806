package polewright.axis.advice;

import java.util.Set;
import polewright.axis.allowance.Allowance;
import polewright.axis.fix.Fix;
import polewright.axis.rig.Rig;

/**
 * All that advice depends on.
 *
 * @param clamped whether the clamps are tight
 * @param sinceClamp what has been seen since they were tightened
 * @param alreadyRead compass, scale or shadow, if they have been read since the tripod was last set down: reading them
 *     again would only bring the same errors again
 * @param daylight whether the Sun is up, so that no star can be used
 */
public record Situation(
        Rig rig,
        Fix fix,
        Allowance allowance,
        boolean clamped,
        Confirmation sinceClamp,
        Set<SightingKind> alreadyRead,
        boolean daylight) {}
