/**
 * How far off the axis may be for tonight's work, and the inverse: how long an exposure may be with the axis where it is.
 *
 * <pre>
 *   site, weather ─▶ SeenSky ──┐
 *   WorkItem ─▶ Stretches ─────┴─▶ ItemLimits: MotionLimit, MotionLimit, …  each an exact ImageMotion
 *                                      │
 *            ZoneFinder ◀──────────────┴──────────────▶ ExposureLimits
 *   ShapedLimit ─▶ LeastShare ─▶ ZoneOutline ─▶ WorkZone
 * </pre>
 */
@NullMarked
package polewright.alignment.allowance;

import org.jspecify.annotations.NullMarked;
