/**
 * Star atlas, named stars, deep-sky list and constellations, read from tables bundled in the jar.
 *
 * <pre>
 *   StarAtlas      cone of sky, magnitude limit ──▶ StarField (unit vectors, brightest first) ──▶ AtlasStar
 *   NamedStars     "Vega", "alp Lyr", "HIP 91262" ──▶ NamedStar (place, motion, magnitude)
 *   DeepSkyList    "M 31", "NGC 224"              ──▶ DeepSkyObject (place, kind, size)
 *   Constellations ICRS place                     ──▶ Constellation
 * </pre>
 *
 * <p>Each table is built by the module {@code data}; {@code docs/data.md} gives its provenance, licence and accuracy.
 */
@NullMarked
package polewright.sky.atlas;

import org.jspecify.annotations.NullMarked;
