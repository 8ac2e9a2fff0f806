/**
 * The axis estimated from everything that happened tonight.
 *
 * <pre>
 *   Step, Step, … ─▶ NightSmoother: AxisState over moves (Motion) and sightings (LinearisedSighting)
 *                        │
 *                    Contradictions: which sightings to believe ─▶ Account
 *                        │
 *                    DoubtedScrews, TurnSuspects: or is it the rig, or a turn?
 *                        │
 *                    FixSolver ─┬─▶ Fix: AxisState, agreements             tonight
 *                               └─▶ Hindsight                              for later nights
 * </pre>
 */
@NullMarked
package polewright.alignment.fix;

import org.jspecify.annotations.NullMarked;
