package polewright.bench.independent.truth;

/**
 * The position of a star in the field relative to the centre of rotation, as estimated by eye.
 *
 * @param fieldWidths distance
 * @param clock direction in the view: 12 at the top, 3 at the right
 */
public record StarInField(double fieldWidths, double clock) {}
