/**
 * Where the polar axis points, and what to do about it.
 *
 * <pre>
 *   sighting ──▶ fix ─────────┐
 *   rig ────────▲             ├──▶ advice
 *   work ──▶ allowance ───────┘
 * </pre>
 */
@NullMarked
package polewright.alignment;

import org.jspecify.annotations.NullMarked;
