package polewright.mount.pointing;

import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;

/**
 * A star in the middle of the field, and what the mount read then.
 *
 * @param star what it is called
 * @param seen where it was seen, refraction included
 * @param reading the mount's
 * @param sigma 1 sigma of the centring in each direction on the sky
 */
public record Centring(String star, HourAnglePlace seen, MountReading reading, Angle sigma) {}
