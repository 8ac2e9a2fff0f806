/**
 * Altitudes along the horizon: the skyline, and the residuals of a pointing model.
 *
 * <pre>
 *   Horizon, Site ──▶ SkylineOutline ──▶ HorizonDrawing, HorizonStripDrawing (to edit)
 *   PointingModel, PointingLimits ──▶ ResidualDrawing
 * </pre>
 */
@NullMarked
package polewright.drawing.strip;

import org.jspecify.annotations.NullMarked;
