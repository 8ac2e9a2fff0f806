package polewright.planning.tonight;

import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/** The axis with its covariance. */
public record KnownAxis(AxisOffset offset, OffsetCovariance covariance) {}
