/**
 * Builders of the tables in the module {@code sky}, each from the packages it names. Not part of the shipped jar.
 * <pre>
 *   Tycho-2 index files ─────────────▶ TychoIndexFile ─┐
 *   bright stars with motion (text) ─▶ MotionStars ────┼─▶ BuildStarAtlas, BuildNamedStars
 *   Hipparcos places and names ──────▶ HipparcosStars ─┘
 *   deep-sky lists ──────────────────────────────────────▶ BuildDeepSkyList
 *   constellation borders ───────────────────────────────▶ BuildConstellations
 *   planets' series ─────────────────────────────────────▶ BuildPlanetSeries
 *   magnetic model ──────────────────────────────────────▶ BuildMagneticTable
 * </pre>
 *
 * <p>Each is a program of its own: the same sources give the same bytes. {@code docs/data.md} names the packages that
 * contain the sources.
 */
@NullMarked
package polewright.data;

import org.jspecify.annotations.NullMarked;
