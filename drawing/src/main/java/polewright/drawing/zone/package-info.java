/**
 * The zone in which the axis may point tonight, and where it points.
 *
 * <pre>
 *   Allowance ──▶ ZoneRim (stretches of the edge, each with its cause)
 *                      │
 *   ZoneScene ──▶ ZoneDrawing (sheet) ──▶ ZonePanel (one map) ──▶ MapView, MapLabels, Rulers, ZoneMarks; MapKey
 * </pre>
 */
@NullMarked
package polewright.drawing.zone;

import org.jspecify.annotations.NullMarked;
