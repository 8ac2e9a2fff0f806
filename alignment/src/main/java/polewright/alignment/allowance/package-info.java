/**
 * The tolerance of tonight's work on the axis, and the inverse: the longest exposure for a given axis.
 *
 * <pre>
 *   site, weather ─▶ ApparentSky ──────┐
 *   WorkItem ─▶ SkyRegionSampling ─────┴─▶ ItemLimits: MotionLimit, MotionLimit, …  each an exact ImageMotion
 *                                              │
 *            ZoneFinder ◀──────────────────────┴──────────────▶ ExposureLimits
 *   ShapedLimit ─▶ LeastUsedTolerance ─▶ ZoneOutline ─▶ WorkZone
 * </pre>
 */
@NullMarked
package polewright.alignment.allowance;

import org.jspecify.annotations.NullMarked;
