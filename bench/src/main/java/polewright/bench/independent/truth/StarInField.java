package polewright.bench.independent.truth;

/**
 * Where a star stands in the field from the point that stays still, as the eye has it.
 *
 * @param fieldWidths how far
 * @param clock in which direction of the view: 12 at the top, 3 at the right
 */
public record StarInField(double fieldWidths, double clock) {}
