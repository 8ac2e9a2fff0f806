package polewright.simulation.camera;

/**
 * A star as it really is in a frame.
 *
 * @param number in the {@link polewright.sky.atlas.StarAtlas}, or {@link #OF_NO_ATLAS}
 * @param magnitude as the atlas has it
 * @param x column where it stood at the middle of the exposure, pixels
 * @param y row
 * @param startX column at the start of the exposure
 * @param startY row
 * @param endX column at the end of the exposure
 * @param endY row
 * @param electrons charge that all of its image leaves, on the average
 */
public record TrueStar(
        int number,
        double magnitude,
        double x,
        double y,
        double startX,
        double startY,
        double endX,
        double endY,
        double electrons) {
    /** Number of an invented star. */
    public static final int OF_NO_ATLAS = -1;

    /** From its start to its end, straight, pixels. */
    public double trailPixels() {
        return Math.hypot(endX - startX, endY - startY);
    }
}
