package polewright.mount.pointing;

import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;

/**
 * A centred star and the mount's reading at that time.
 *
 * @param star its name
 * @param seen its observed direction, refraction included
 * @param reading the mount's reading
 * @param sigma 1 sigma of the centring in each direction on the sky
 */
public record Centring(String star, HourAnglePlace seen, MountReading reading, Angle sigma) {}
