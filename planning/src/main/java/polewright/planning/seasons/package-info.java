/**
 * Nights beside each other: what each came to, how the pier and the wedge moved between them, and over seasons.
 *
 * <pre>
 *   events of a night ──▶ {@link polewright.planning.seasons.NightRecord} ─┐
 *   events of a night ──▶ NightRecord ─┴▶ {@link polewright.planning.seasons.NightGap} ──▶ {@link polewright.planning.seasons.PierMotion}
 *                                                        └────────▶ {@link polewright.planning.seasons.SeasonsDrawing}
 * </pre>
 *
 * <p>Where the axis stands is changed by every turn of a screw. So it is not the fixes that are put on one line, but the
 * differences between how one night left the axis and how the next one found it: what nobody did.
 */
@NullMarked
package polewright.planning.seasons;

import org.jspecify.annotations.NullMarked;
