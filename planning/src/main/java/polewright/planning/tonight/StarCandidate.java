package polewright.planning.tonight;

/**
 * A candidate for alignment.
 *
 * @param isSeenByEye whether it is visible to the eye, or only through the telescope
 * @param isBrightestAround whether nothing brighter is within 20°
 * @param penalty the natural logarithm of the increase in go-to error that would be accepted to avoid it
 */
record StarCandidate(StarInView seen, boolean isSeenByEye, boolean isBrightestAround, double penalty) {}
