package polewright.image.match;

/**
 * A position on a frame.
 *
 * @param x column, 0 at the centre of the first
 * @param y row, 0 at the centre of the first
 */
public record PixelPlace(double x, double y) {}
