package polewright.alignment.allowance;

import polewright.mount.AxisOffset;

/**
 * A stretch of the zone's edge, short enough to pass for straight.
 *
 * @param from its beginning; the next edge begins at {@code to}
 * @param to its end, anticlockwise about the zone with east to the right and up upward
 * @param item the name of the item of work that draws the line here
 * @param cause what goes wrong beyond it
 */
public record ZoneEdge(AxisOffset from, AxisOffset to, String item, LimitCause cause) {}
