/**
 * Whether the order of the night is a good one: random evenings, the score documented in docs/tonight.md, and a
 * planner that tries every order, all written independently of the code under test.
 * <pre>
 *   RandomEvening ──▶ product's plan ──▶ DocumentedScore ──┐
 *         └─────────▶ EveryOrder ──────▶ DocumentedScore ──┴──▶ share
 * </pre>
 */
@NullMarked
package polewright.bench.planning;

import org.jspecify.annotations.NullMarked;
