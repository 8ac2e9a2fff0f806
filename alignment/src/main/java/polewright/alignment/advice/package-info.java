/**
 * Decides what to do next, from the fix and the allowance.
 *
 * <pre>
 *   fix, allowance, rig, sky ─▶ Situation ─▶ Adviser ─▶ Advice
 *                                              ├─▶ Outlook: probability of ending within the allowance, left or turned
 *                                              ├─▶ TurnPlanner ─▶ ScrewTurn, and SkyInView: how the view moves
 *                                              ├─▶ SightingPlanner: Candidate ─▶ InformationMatrix ─▶ RankedSighting
 *                                              └─▶ AdjustmentRound ─▶ Prospect: result of one more adjustment
 * </pre>
 */
@NullMarked
package polewright.alignment.advice;

import org.jspecify.annotations.NullMarked;
