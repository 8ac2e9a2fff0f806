package polewright.alignment.advice;

import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * Where one more adjustment would leave the axis, clamped and confirmed, and what that costs.
 *
 * @param offset where the axis would point on average
 * @param covariance how far from there it may come to stand
 * @param minutes of work: a sighting first if one is needed, the turns, the clamps, a sighting to confirm
 */
public record Prospect(AxisOffset offset, OffsetCovariance covariance, double minutes) {}
