/**
 * What to look for and what to measure in a sighting, with the figures as entered.
 *
 * <pre>
 *   SightingSketch ──▶ PlanSketch (from above), HeightSketch (from the side), EyepieceSketch (the field)
 * </pre>
 */
@NullMarked
package polewright.drawing.sighting;

import org.jspecify.annotations.NullMarked;
