package polewright.mount.pointing;

/**
 * How a star agrees with the model.
 *
 * @param left where it was seen from where the model looks
 * @param leftOut the same by a model that did not know this star: what a go-to there would have missed by
 * @param leftOutSquare leftOut against what was to be expected, χ² of 2 degrees of freedom when all is as it says
 */
public record StarResidual(Centring centring, SkyOffset left, SkyOffset leftOut, double leftOutSquare) {}
