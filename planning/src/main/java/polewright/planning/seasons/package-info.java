/**
 * Nights compared: the outcome of each, the movement of pier and wedge between them, and over seasons.
 *
 * <pre>
 *   events of a night ──▶ {@link polewright.planning.seasons.NightRecord} ─┐
 *   events of a night ──▶ NightRecord ─┴▶ {@link polewright.planning.seasons.NightGap} ──▶ {@link polewright.planning.seasons.PierMotion}
 * </pre>
 *
 * <p>Every turn of a screw changes the axis. So the trend is fitted not to the fixes, but to the differences between
 * the axis at the end of one night and at the beginning of the next: the movement while the mount was not in use.
 */
@NullMarked
package polewright.planning.seasons;

import org.jspecify.annotations.NullMarked;
