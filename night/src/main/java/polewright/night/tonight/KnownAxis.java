package polewright.night.tonight;

import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;

/** Where the axis points, and how well that is known. */
public record KnownAxis(AxisOffset offset, OffsetCovariance covariance) {}
