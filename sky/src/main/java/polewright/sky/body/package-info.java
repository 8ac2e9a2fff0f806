/**
 * Sun, Moon, planets and named stars: where they appear from a site, how far they are, and how near the Sun is.
 *
 * <pre>
 *   SkyBody ── SolarSystemBody ──▶ SolarSystem ──▶ BodyAppearance (place, distance, semi-diameter)
 *          └── FixedStar ──▶ ObservingMoment      └──▶ SunGuard (degrees from the edge of the Sun's disc)
 *              both through Ephemeris.apparent(body, moment) ──▶ ApparentPlace
 * </pre>
 */
@NullMarked
package polewright.sky.body;

import org.jspecify.annotations.NullMarked;
