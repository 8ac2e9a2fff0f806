package polewright.image.star;

/**
 * A local maximum of the filtered frame.
 *
 * @param x column
 * @param y row
 * @param height in units of the noise
 */
record Peak(int x, int y, float height) {}
