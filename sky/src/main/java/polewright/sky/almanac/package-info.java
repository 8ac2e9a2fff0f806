/**
 * Times of events in the sky: risings and settings, twilight, the Moon's phase.
 *
 * <pre>
 *   site + body + hours ──▶ AltitudeTrack ─┬─▶ AltitudeCrossings
 *                                          ├─▶ RisingAndSetting (over a LevelHorizon)
 *                                          └─▶ Darkness (the Sun) ──▶ MoonTonight (with its LunarPhase)
 * </pre>
 */
@NullMarked
package polewright.sky.almanac;

import org.jspecify.annotations.NullMarked;
