/**
 * The sky over one site at one instant.
 *
 * <p>The data flow; each arrow is one method that returns a new type:
 *
 * <pre>
 *   CatalogueStar ──▶ ApparentPlace ──▶ HourAnglePlace ◀──▶ AirlessDirection ◀──▶ RefractedDirection
 *     (ICRS)          (of date,          (hour angle,         (ENU, no air)          (ENU, as seen)
 *                      topocentric)       declination)
 * </pre>
 *
 * <p>{@link polewright.sky.place.ObservingMoment} holds what all stars of one site and instant share. Nothing in this
 * module reads a file, a clock, a network or a source of randomness, beyond the tables bundled in its own jar.
 */
@NullMarked
package polewright.sky;

import org.jspecify.annotations.NullMarked;
