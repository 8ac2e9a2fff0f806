package polewright.alignment.allowance;

import polewright.mount.AxisOffset;

/**
 * A piece of the zone's edge, short enough to be straight.
 *
 * @param from its beginning; the next edge begins at {@code to}
 * @param to its end, anticlockwise around the zone with east to the right and up upward
 * @param item name of the item of work that sets the limit here
 * @param cause what goes wrong beyond it
 */
public record ZoneEdge(AxisOffset from, AxisOffset to, String item, LimitCause cause) {}
