package polewright.planning.tonight;

/**
 * A star that could be aligned on.
 *
 * @param isSeenByEye or else only through the telescope
 * @param isBrightestAround nothing brighter within 20°
 * @param reluctance what speaks against it, as the natural logarithm of the go-to error that one would put up with to
 *     have another
 */
record StarCandidate(StarInView seen, boolean isSeenByEye, boolean isBrightestAround, double reluctance) {}
