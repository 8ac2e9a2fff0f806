package polewright.planning.seasons;

import java.time.Instant;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * The axis at some time.
 *
 * @param at time of the last sighting that contributes to it
 * @param offset from the elevated pole, on the sky
 * @param covariance of {@code offset}
 */
public record AxisAtTime(Instant at, AxisOffset offset, OffsetCovariance covariance) {}
