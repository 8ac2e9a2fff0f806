/**
 * When things happen on the sky: risings and settings, twilight, the Moon's phase.
 *
 * <pre>
 *   site + body + altitude ──▶ AltitudeCrossings ──▶ Darkness (the Sun), MoonTonight
 * </pre>
 */
@NullMarked
package polewright.sky.almanac;

import org.jspecify.annotations.NullMarked;
