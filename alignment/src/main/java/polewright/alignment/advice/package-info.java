/**
 * What to do next, from the fix and the allowance.
 *
 * <pre>
 *   fix, allowance, rig, sky ─▶ Situation ─▶ Adviser ─▶ Advice
 *                                              ├─▶ Outlook: how likely it ends within the allowance, left or turned
 *                                              ├─▶ TurnPlanner ─▶ ScrewTurn, and SkyInView: what the view does meanwhile
 *                                              ├─▶ SightingPlanner: Candidate ─▶ Information ─▶ RankedSighting
 *                                              └─▶ Round ─▶ Prospect: where one more adjustment would leave the axis
 * </pre>
 */
@NullMarked
package polewright.alignment.advice;

import org.jspecify.annotations.NullMarked;
