/**
 * Estimation of the axis from all of tonight's sightings and moves.
 *
 * <pre>
 *   Step, Step, … ─▶ NightSmoother: AxisState over moves (Motion) and sightings (LinearisedSighting)
 *                        │
 *                    Contradictions: which sightings to believe ─▶ Interpretation
 *                        │
 *                    DoubtedScrews, TurnSuspects: or is the rig or a turn wrong?
 *                        │
 *                    FixSolver ─┬─▶ Fix: AxisState, agreements             tonight
 *                               └─▶ MountCalibration                       for later nights
 * </pre>
 */
@NullMarked
package polewright.alignment.fix;

import org.jspecify.annotations.NullMarked;
