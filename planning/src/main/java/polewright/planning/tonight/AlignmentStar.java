package polewright.planning.tonight;

/**
 * A star to centre.
 *
 * @param isSeenByEye or else only through the telescope
 * @param isBrightestAround nothing brighter within 20°
 * @param around how to know it
 * @param move the way to it from the one before, or from the start
 */
public record AlignmentStar(
        StarInView seen, boolean isSeenByEye, boolean isBrightestAround, StarSurroundings around, StarMove move) {}
