package polewright.axis.pointing;

import polewright.sky.angle.Angle;

/**
 * How far from the middle a go-to is to be expected to land.
 *
 * @param usual root mean square of the distance
 * @param nineteenOfTwenty within so much it lands 95 times in 100
 */
public record GoToError(Angle usual, Angle nineteenOfTwenty) {}
