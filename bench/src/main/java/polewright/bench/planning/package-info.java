/**
 * Whether the order of the night is a good one: random evenings, the score that docs/tonight.md states, and a planner that
 * tries every order, all written apart from what they test.
 *
 * <pre>
 *   RandomEvening ──▶ product's plan ──▶ DocumentedScore ──┐
 *         └─────────▶ EveryOrder ──────▶ DocumentedScore ──┴──▶ share
 * </pre>
 */
@NullMarked
package polewright.bench.planning;

import org.jspecify.annotations.NullMarked;
