package polewright.alignment.advice;

import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * The expected result of one more adjustment, clamped and confirmed, and the time it takes.
 *
 * @param offset expected offset of the axis
 * @param covariance about that offset
 * @param minutes of work: a sighting first if one is needed, the turns, the clamps, and a confirming sighting
 */
public record Prospect(AxisOffset offset, OffsetCovariance covariance, double minutes) {}
