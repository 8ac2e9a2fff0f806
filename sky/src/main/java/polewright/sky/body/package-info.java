/**
 * Sun, Moon, planets and named stars: their apparent places from a site, their distances, and their separation from the
 * Sun.
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
