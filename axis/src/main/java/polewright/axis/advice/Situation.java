package polewright.axis.advice;

import polewright.axis.allowance.Allowance;
import polewright.axis.fix.Fix;
import polewright.axis.rig.Rig;

/**
 * All that advice depends on.
 *
 * @param clamped whether the clamps are tight
 * @param sightedSinceClamp whether a sighting has been taken since they were tightened
 * @param groundRead whether compass or scale have been read since the tripod was last set down: reading them again
 *     brings the same errors again
 */
public record Situation(
        Rig rig, Fix fix, Allowance allowance, boolean clamped, boolean sightedSinceClamp, boolean groundRead) {}
