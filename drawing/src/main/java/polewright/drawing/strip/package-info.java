/**
 * Strips: altitudes along the horizon or through a night, and how the axis moves over seasons.
 *
 * <pre>
 *   Horizon, Site ──▶ HorizonDrawing (to look at, to edit) ─────────┐
 *   PointingModel, PointingLimits ──▶ ResidualDrawing ──────────────┴─▶ SkyAround ─┐
 *   NightAltitudes ──▶ NightDrawing ───────────────────────────────────────────────┴─▶ AltitudeStrip ─┐
 *   AxisMotion ──▶ SeasonsDrawing ────────────────────────────────────────────────────────────────────┴─▶ Plot
 * </pre>
 */
@NullMarked
package polewright.drawing.strip;

import org.jspecify.annotations.NullMarked;
