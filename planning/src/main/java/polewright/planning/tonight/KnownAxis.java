package polewright.planning.tonight;

import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/** Where the axis points, and how well that is known. */
public record KnownAxis(AxisOffset offset, OffsetCovariance covariance) {}
