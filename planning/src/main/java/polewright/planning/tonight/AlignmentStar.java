package polewright.planning.tonight;

/**
 * A star to centre.
 *
 * @param isSeenByEye whether it is visible to the eye, or only through the telescope
 * @param isBrightestAround whether nothing brighter is within 20°
 * @param around how to identify it
 * @param move the slew to it from the previous one, or from the start
 */
public record AlignmentStar(
        StarInView seen, boolean isSeenByEye, boolean isBrightestAround, StarSurroundings around, StarMove move) {}
