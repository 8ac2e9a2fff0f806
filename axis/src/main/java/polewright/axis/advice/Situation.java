package polewright.axis.advice;

import polewright.axis.allowance.Allowance;
import polewright.axis.fix.Fix;
import polewright.axis.rig.Rig;

/**
 * All that advice depends on.
 *
 * @param clamped whether the clamps are tight
 * @param sinceClamp what has been seen since they were tightened
 * @param compassRead whether the compass has been read since the tripod was last set down: reading it again would only
 *     bring the same error again
 * @param scaleRead the same of the wedge's scale
 */
public record Situation(
        Rig rig,
        Fix fix,
        Allowance allowance,
        boolean clamped,
        Confirmation sinceClamp,
        boolean compassRead,
        boolean scaleRead) {}
