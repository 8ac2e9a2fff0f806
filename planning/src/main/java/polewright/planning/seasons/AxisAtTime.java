package polewright.planning.seasons;

import java.time.Instant;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * Where the axis pointed at some time.
 *
 * @param at when the last sighting that tells of it was made
 * @param offset from the pole that is up, on the sky
 * @param covariance of {@code offset}
 */
public record AxisAtTime(Instant at, AxisOffset offset, OffsetCovariance covariance) {}
