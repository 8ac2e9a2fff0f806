package polewright.image.star;

/**
 * A place where the filtered frame stands above all its neighbours.
 *
 * @param x column
 * @param y row
 * @param height over the noise
 */
record Peak(int x, int y, float height) {}
