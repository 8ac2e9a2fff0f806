package polewright.simulation.camera;

/**
 * The true values of a star in a frame.
 *
 * @param number in the {@link polewright.sky.atlas.StarAtlas}, or {@link #OF_NO_ATLAS}
 * @param magnitude as in the atlas
 * @param x column at the middle of the exposure, pixels
 * @param y row at the middle of the exposure
 * @param startX column at the start of the exposure
 * @param startY row at the start of the exposure
 * @param endX column at the end of the exposure
 * @param endY row at the end of the exposure
 * @param electrons mean charge of its whole image
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

    /** Straight distance from its start to its end, pixels. */
    public double trailPixels() {
        return Math.hypot(endX - startX, endY - startY);
    }
}
