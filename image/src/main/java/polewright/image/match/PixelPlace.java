package polewright.image.match;

/**
 * A place on a frame.
 *
 * @param x column, the first one's middle at 0
 * @param y row, likewise
 */
public record PixelPlace(double x, double y) {}
